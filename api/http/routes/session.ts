import { createRoute, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import type { Account } from '../../db/people-stores.ts';
import { jsonAnswer, problemAnswers, textBody } from '../answers.ts';
import type { AppParts } from '../app-parts.ts';
import { routeAt } from '../guards.ts';
import { Problem } from '../problems.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';
import { sessionAnswer, sessionAnswerOf } from '../session-answer.ts';
import { after, SESSION_MOST_MS } from '../sign-in/life-spans.ts';
import { email, givenPassword, newPassword } from '../sign-in/said-by-people.ts';
import { carryToken, dropToken, tokenIn } from '../sign-in/session-cookie.ts';
import { countedAccount, countedAddress, countGuess } from '../sign-in/slow-down.ts';
import { newToken, tokenHashOf } from '../sign-in/tokens.ts';
import { askerOf } from '../sign-in/who-asks.ts';
import { smallBodyOf } from '../small-body.ts';

const signInBody = z.strictObject({ email, password: givenPassword });
const passwordBody = z.strictObject({ current: givenPassword, password: newPassword });

const readSession = createRoute({
  ...routeAt('session'),
  summary: 'Who is signed in, if anybody has to be',
  responses: { 200: jsonAnswer('Whoever asks.', sessionAnswer) },
});

const signIn = createRoute({
  ...routeAt('signIn'),
  summary: 'Sign in',
  description: 'The answer’s cookie is the session. Whether there is such an account is not told.',
  request: { body: textBody('SignIn') },
  responses: {
    200: jsonAnswer('Signed in.', sessionAnswer),
    ...problemAnswers('not-json', 'sign-in-refused', 'body-unreadable', 'not-now', 'too-many-attempts'),
  },
});

const signOut = createRoute({
  ...routeAt('signOut'),
  summary: 'Sign out',
  responses: { 204: { description: 'The session is over; so it is where there was none.' } },
});

const changePassword = createRoute({
  ...routeAt('changePassword'),
  summary: 'Change one’s own password',
  description: 'Every other session of the account ends.',
  request: { body: textBody('ChangePassword') },
  responses: {
    204: { description: 'Changed.' },
    ...problemAnswers('not-json', 'not-allowed', 'not-now', 'body-unreadable', 'too-many-attempts'),
  },
});

/** Begins a session of an account that was proven, in place of the one that the request came with. */
export async function beginSession(
  c: Context,
  { signIn: store, settings, now }: AppParts,
  account: Pick<Account, 'firmId' | 'id'>,
): Promise<void> {
  const before = tokenIn(c, settings);
  if (before !== null) await store.endSession(tokenHashOf(before));
  await store.sweepSessions(after(now(), -SESSION_MOST_MS));
  const { token, tokenHash } = newToken();
  await store.beginSession(account, tokenHash);
  carryToken(c, settings, token);
}

/** The problem of people on a server where nobody signs in. */
export const nobodySignsIn = (): Problem =>
  new Problem('not-now', 'Nobody signs in on this machine: only it reaches the server.');

/** The account of an address and its password; a wrong one is counted and refused. */
async function proven(
  c: Context,
  { signIn: store, attempts, passwords, settings }: AppParts,
  { email: address, password }: z.infer<typeof signInBody>,
): Promise<Account> {
  const [byAccount, byAddress] = [countedAccount(address), countedAddress('sign-in', c, settings)];
  await countGuess(attempts, [byAccount, byAddress]);
  const account = await store.account(address);
  const { isRight, isOutdated } = await passwords.matches(password, account?.passwordHash ?? null);
  if (account === null || !isRight)
    throw new Problem('sign-in-refused', 'E-mail address and password do not go together.');
  await attempts.clear(byAccount.key);
  await attempts.giveBack(byAddress.key);
  // Only now is the password known, to be kept at today's cost.
  if (isOutdated) await store.setPassword(account, await passwords.hash(password));
  return account;
}

/** Signing in and out, one's own password. */
export function sessionRoutes(parts: AppParts): FirmApp {
  const { settings, passwords, attempts } = parts;
  const app = resourceApp()
    .openapi(readSession, async (c) => c.json(sessionAnswerOf(await askerOf(c, parts), settings), 200))
    .openapi(signIn, async (c) => {
      if (!settings.signIn) throw nobodySignsIn();
      const account = await proven(c, parts, await smallBodyOf(c, signInBody));
      await beginSession(c, parts, account);
      return c.json(sessionAnswerOf({ ...account, account }, settings), 200);
    })
    .openapi(signOut, async (c) => {
      const token = tokenIn(c, settings);
      if (token !== null) await parts.signIn.endSession(tokenHashOf(token));
      dropToken(c, settings);
      return c.body(null, 204);
    })
    .openapi(changePassword, async (c) => {
      const { firmId, account } = c.var.asker;
      if (account === null) throw nobodySignsIn();
      const { current, password } = await smallBodyOf(c, passwordBody);
      const counted = countedAccount(account.email);
      await countGuess(attempts, [counted]);
      const kept = await parts.signIn.account(account.email);
      if (!(await passwords.matches(current, kept?.passwordHash ?? null)).isRight)
        throw new Problem('not-allowed', 'The password of now is another.');
      await attempts.clear(counted.key);
      const own = tokenHashOf(tokenIn(c, settings) ?? '');
      await parts.signIn.setPassword({ firmId, id: account.id }, await passwords.hash(password), own);
      return c.body(null, 204);
    });
  app.openAPIRegistry.register('SignIn', signInBody);
  app.openAPIRegistry.register('ChangePassword', passwordBody);
  return app;
}
