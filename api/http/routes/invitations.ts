import { createRoute, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { type Invitation, roles } from '../../db/people-stores.ts';
import { jsonAnswer, problemAnswers, textBody } from '../answers.ts';
import type { AppParts } from '../app-parts.ts';
import { routeAt } from '../guards.ts';
import { Problem } from '../problems.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';
import { sessionAnswer, sessionAnswerOf } from '../session-answer.ts';
import { isWithin } from '../sign-in/life-spans.ts';
import { email, newPassword, personName } from '../sign-in/said-by-people.ts';
import { countedAddress, countGuess } from '../sign-in/slow-down.ts';
import { isToken, newRecordId, tokenHashOf } from '../sign-in/tokens.ts';
import { smallBodyOf } from '../small-body.ts';
import { beginSession, nobodySignsIn } from './session.ts';

const token = z.string().max(200);
const lookBody = z.strictObject({ token });
const useBody = z.strictObject({
  token,
  password: newPassword,
  /** Of a new account. */
  name: personName.optional(),
  email: email.optional(),
});

const lookAt = createRoute({
  ...routeAt('lookAtInvitation'),
  summary: 'Whom a link for a password is for',
  request: { body: textBody('InvitationToken') },
  responses: {
    200: jsonAnswer(
      'It goes.',
      z.object({ name: z.string(), role: z.enum(roles), isNewAccount: z.boolean(), expiresAt: z.string() }),
    ),
    ...problemAnswers('not-json', 'no-such-invitation', 'body-unreadable', 'not-now', 'too-many-attempts'),
  },
});

const use = createRoute({
  ...routeAt('useInvitation'),
  summary: 'Set a password by an invitation, and sign in with it',
  description: 'Once. Name and e-mail address belong to a new account alone.',
  request: { body: textBody('UseInvitation') },
  responses: {
    200: jsonAnswer('Set; signed in.', sessionAnswer),
    ...problemAnswers(
      'not-json',
      'no-such-invitation',
      'email-taken',
      'body-unreadable',
      'not-now',
      'too-many-attempts',
    ),
  },
});

const noSuchInvitation = (): Problem =>
  new Problem('no-such-invitation', 'It was used, withdrawn or is too old. Ask whoever sent it for another.');

/** The invitation of a token, while it goes; every other is refused alike. */
async function invited(c: Context, parts: AppParts, given: string): Promise<Invitation & { firmId: string }> {
  const { signIn, attempts, settings, now } = parts;
  if (!settings.signIn) throw nobodySignsIn();
  const counted = countedAddress('invitation', c, settings);
  await countGuess(attempts, [counted]);
  const found = isToken(given) ? await signIn.invitation(tokenHashOf(given)) : null;
  if (found === null || !isWithin(found.madeAt, found.expiresAt, now())) throw noSuchInvitation();
  await attempts.clear(counted.key);
  return found;
}

/** Links by which passwords are set. */
export function invitationRoutes(parts: AppParts): FirmApp {
  const { signIn, passwords, settings } = parts;
  const app = resourceApp()
    .openapi(lookAt, async (c) => {
      const body = await smallBodyOf(c, lookBody);
      const { name, role, accountId, expiresAt } = await invited(c, parts, body.token);
      return c.json({ name, role, isNewAccount: accountId === null, expiresAt }, 200);
    })
    .openapi(use, async (c) => {
      const body = await smallBodyOf(c, useBody);
      const { accountId, name: invitedAs } = await invited(c, parts, body.token);
      if (accountId === null && body.email === undefined)
        throw new Problem('body-unreadable', 'email: a new account needs an e-mail address.');
      const used = await signIn.useInvitation(tokenHashOf(body.token), {
        id: newRecordId(),
        name: body.name ?? invitedAs,
        email: body.email ?? '',
        passwordHash: await passwords.hash(body.password),
      });
      if (used.outcome === 'no-such-invitation') throw noSuchInvitation();
      if (used.outcome === 'email-taken')
        throw new Problem('email-taken', 'Sign in with it, or give another address.');
      const people = await (await parts.storesFor(used.account.firmId)).people.list();
      const person = people.find(({ id }) => id === used.account.id);
      if (person === undefined) throw noSuchInvitation();
      await beginSession(c, parts, used.account);
      const { id, name, email: address, role } = person;
      const account = { id, name, email: address };
      return c.json(sessionAnswerOf({ firmId: used.account.firmId, role, account }, settings), 200);
    });
  app.openAPIRegistry.register('InvitationToken', lookBody);
  app.openAPIRegistry.register('UseInvitation', useBody);
  return app;
}
