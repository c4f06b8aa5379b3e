import type { Context } from 'hono';
import type { Person, Role, SignInStore } from '../../db/people-stores.ts';
import { OWN_FIRM } from '../../db/stores-of.ts';
import { isAlive, isToBeNoted } from './life-spans.ts';
import { type CookieSettings, tokenIn } from './session-cookie.ts';
import { tokenHashOf } from './tokens.ts';

/** Who asks, and what they may do. */
export interface Asker {
  readonly firmId: string;
  readonly role: Role;
  /** Null on one's own machine, where nobody signs in. */
  readonly account: Pick<Person, 'id' | 'name' | 'email'> | null;
}

/** What is needed to tell who asks. */
export interface WhoParts {
  readonly signIn: SignInStore;
  readonly settings: CookieSettings & { readonly signIn: boolean };
  readonly now: () => Date;
}

/** Whoever sits at the machine that the server runs on, where nobody else reaches it. */
const ownMachine: Asker = { firmId: OWN_FIRM, role: 'owner', account: null };

/**
 * The firm that a screen takes itself to be of: somebody of another may have signed in meanwhile in another window, and
 * nothing of one firm is to be kept at the other.
 */
export const FIRM_HEADER = 'ringwright-firm';

/** Whose session a request carries; null where it carries none that still goes. */
export async function sessionOf(c: Context, { signIn, settings, now }: WhoParts): Promise<Asker | null> {
  const token = tokenIn(c, settings);
  if (token === null) return null;
  const tokenHash = tokenHashOf(token);
  const stored = await signIn.session(tokenHash);
  if (stored === null || !isAlive(stored, now())) return null;
  // That it could not be noted keeps nobody from reading; a full disk is told by what wants to write.
  if (isToBeNoted(stored, now())) await signIn.noteSeen(tokenHash).catch(() => undefined);
  const { firmId, role, id, name, email } = stored.account;
  return { firmId, role, account: { id, name, email } };
}

/** Who asks; null where nobody is signed in who would have to be. */
export async function askerOf(c: Context, parts: WhoParts): Promise<Asker | null> {
  if (!parts.settings.signIn) return ownMachine;
  const asker = await sessionOf(c, parts);
  const firm = c.req.header(FIRM_HEADER);
  return asker !== null && firm !== undefined && firm !== asker.firmId ? null : asker;
}
