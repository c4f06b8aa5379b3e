import type { Context, MiddlewareHandler } from 'hono';
import type { Role } from '../db/people-stores.ts';
import type { Stores } from '../db/stores.ts';
import { Problem } from './problems.ts';
import { requestEntryOf } from './request-log.ts';
import type { Access } from './route-table.ts';
import type { Asker } from './sign-in/who-asks.ts';

/** What of the app a guard needs. */
export interface Door {
  readonly asker: (c: Context) => Promise<Asker | null>;
  readonly storesFor: (firmId: string) => Promise<Stores>;
}

/** What every handler finds with its request; the last two where its route is not for anyone. */
export interface AppEnv {
  readonly Variables: {
    readonly door: Door;
    readonly asker: Asker;
    /** Of the asker's firm: no handler has another's. */
    readonly stores: Stores;
  };
}

/** What each role may. */
const allowed: Readonly<Record<Role, readonly Access[]>> = {
  owner: ['read', 'write', 'own'],
  estimator: ['read', 'write'],
  'read-only': ['read'],
};

const refusals: Readonly<Record<Access, string>> = {
  anyone: '',
  read: 'Ask the owner of the firm for an account.',
  write: 'With this account jobs are read and papers fetched. An owner of the firm can change that.',
  own: 'Only an owner of the firm may do that.',
};

/** Lets those through who may use a route, with the stores of their firm and no other's. */
export function accessGuard(access: Access): MiddlewareHandler<AppEnv> {
  return async (c, next) => {
    if (access === 'anyone') return next();
    const { asker: whoAsks, storesFor } = c.var.door;
    const asker = await whoAsks(c);
    if (asker === null) throw new Problem('not-signed-in', 'Sign in to go on.');
    if (!allowed[asker.role].includes(access)) throw new Problem('not-allowed', refusals[access]);
    c.set('asker', asker);
    requestEntryOf(c).firm = asker.firmId;
    c.set('stores', await storesFor(asker.firmId));
    return next();
  };
}
