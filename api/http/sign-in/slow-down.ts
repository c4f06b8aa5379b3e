import type { Context } from 'hono';
import type { AttemptStore, Counted, WaitRule } from '../../db/people-stores.ts';
import { Problem } from '../problems.ts';
import { clientAddress } from './client-address.ts';
import { tokenHashOf } from './tokens.ts';

const MINUTE_MS = 60_000;

/** Wrong passwords for one account. */
const ofAccount: WaitRule = { free: 5, firstMs: 10_000, mostMs: 15 * MINUTE_MS };
/** Wrong passwords, invitations and links from one address: an office has one for all. */
const ofAddress: WaitRule = { free: 20, firstMs: 10_000, mostMs: 15 * MINUTE_MS };

/** What the passwords of an account are counted by: nobody is told whether there is one. */
export const countedAccount = (email: string): Counted => ({
  key: `account ${tokenHashOf(email)}`,
  rule: ofAccount,
});

/** What guesses of a kind are counted by, by where they come from. */
export const countedAddress = (
  kind: 'sign-in' | 'invitation' | 'link',
  c: Context,
  reach: { readonly publicOrigin: string | null },
): Counted => ({ key: `${kind} from ${tokenHashOf(clientAddress(c, reach))}`, rule: ofAddress });

/** The problem of too many guesses, with the wait. */
export function tooMany(waitMs: number): Problem {
  const retryAfterS = Math.max(1, Math.ceil(waitMs / 1000));
  const words = retryAfterS < 90 ? `${retryAfterS} seconds` : `${Math.ceil(retryAfterS / 60)} minutes`;
  return new Problem('too-many-attempts', `Try again in ${words}.`, { retryAfterS });
}

/** Counts a guess before it is looked into; refuses it where one has to wait. */
export async function countGuess(attempts: AttemptStore, by: readonly Counted[]): Promise<void> {
  const wait = await attempts.take(by);
  if (wait > 0) throw tooMany(wait);
}
