import { createRoute, z } from '@hono/zod-openapi';
import { type Invitation, type PeopleStore, type PersonChanged, roles } from '../../db/people-stores.ts';
import { jsonAnswer, problemAnswers, textBody } from '../answers.ts';
import type { AppParts } from '../app-parts.ts';
import { routeAt } from '../guards.ts';
import { Problem } from '../problems.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';
import { after, INVITATION_MS } from '../sign-in/life-spans.ts';
import { personName } from '../sign-in/said-by-people.ts';
import { newRecordId, newToken } from '../sign-in/tokens.ts';
import { smallBodyOf } from '../small-body.ts';

const person = z
  .object({
    id: z.string(),
    name: z.string(),
    email: z.string(),
    role: z.enum(roles),
    since: z.string(),
    closedAt: z.string().nullable().meta({ description: 'Null while the account is open.' }),
  })
  .openapi('Person');

const invitation = z
  .object({
    id: z.string(),
    name: z.string(),
    role: z.enum(roles),
    accountId: z.string().nullable().meta({ description: 'Whose password it sets; null: a new account.' }),
    madeAt: z.string(),
    expiresAt: z.string(),
  })
  .openapi('Invitation');

const madeInvitation = invitation
  .extend({ token: z.string().meta({ description: 'Told this once; its hash is all that is kept.' }) })
  .openapi('MadeInvitation');

const inviteBody = z.strictObject({ name: personName, role: z.enum(roles) });
const roleBody = z.strictObject({ role: z.enum(roles) });
const recordId = z.string().regex(/^[0-9a-z-]{1,64}$/, 'must be an id as the list has it');
const personAddress = z.object({ person: recordId });

const list = createRoute({
  ...routeAt('listPeople'),
  summary: 'The people of the firm, and the invitations that were not used',
  responses: {
    200: jsonAnswer('All of them.', z.object({ people: z.array(person), invitations: z.array(invitation) })),
  },
});

const invite = createRoute({
  ...routeAt('invite'),
  summary: 'Invite somebody: makes a link that is passed on by hand',
  request: { body: textBody('Invite') },
  responses: {
    201: jsonAnswer('Made; the link is /invitation with the token as its fragment.', madeInvitation),
    ...problemAnswers('not-json', 'body-unreadable'),
  },
});

const withdraw = createRoute({
  ...routeAt('withdrawInvitation'),
  summary: 'Let an invitation go no longer',
  request: { params: z.object({ invitation: recordId }) },
  responses: { 204: { description: 'Withdrawn.' }, ...problemAnswers('no-such-invitation') },
});

const setRole = createRoute({
  ...routeAt('setRole'),
  summary: 'Give somebody another role; their sessions end',
  request: { params: personAddress, body: textBody('SetRole') },
  responses: {
    204: { description: 'Given.' },
    ...problemAnswers('not-json', 'no-such-person', 'last-owner', 'body-unreadable'),
  },
});

const close = createRoute({
  ...routeAt('closeAccount'),
  summary: 'Close an account; its sessions end',
  request: { params: personAddress },
  responses: { 204: { description: 'Closed.' }, ...problemAnswers('no-such-person', 'last-owner') },
});

const inviteToPassword = createRoute({
  ...routeAt('inviteToPassword'),
  summary: 'Make a link by which somebody sets a new password',
  request: { params: personAddress },
  responses: {
    201: jsonAnswer('Made, in place of an earlier one.', madeInvitation),
    ...problemAnswers('no-such-person'),
  },
});

const noSuchPerson = (id: string): Problem =>
  new Problem('no-such-person', `Nobody with an open account has the id "${id}".`);

function refuse(changed: PersonChanged, id: string): void {
  if (changed === 'no-such-person') throw noSuchPerson(id);
  if (changed === 'last-owner')
    throw new Problem('last-owner', 'Make somebody else an owner first: else nobody could let people in.');
}

/** Makes an invitation, and tells its token. */
export async function madeInvitationOf(
  people: PeopleStore,
  whom: Pick<Invitation, 'name' | 'role' | 'accountId'>,
  now: Date,
): Promise<Invitation & { readonly token: string }> {
  const { token, tokenHash } = newToken();
  const made = { id: newRecordId(), ...whom, expiresAt: after(now, INVITATION_MS) };
  await people.invite({ ...made, tokenHash });
  return { ...made, madeAt: now.toISOString(), token };
}

/** People: who there is, who is let in, what they may. */
export function peopleRoutes({ now }: AppParts): FirmApp {
  const app = resourceApp()
    .openapi(list, async (c) => {
      const { people } = c.var.stores;
      return c.json(
        { people: [...(await people.list())], invitations: [...(await people.invitations())] },
        200,
      );
    })
    .openapi(invite, async (c) => {
      const { name, role } = await smallBodyOf(c, inviteBody);
      return c.json(await madeInvitationOf(c.var.stores.people, { name, role, accountId: null }, now()), 201);
    })
    .openapi(withdraw, async (c) => {
      const { invitation: id } = c.req.valid('param');
      if (!(await c.var.stores.people.withdraw(id)))
        throw new Problem('no-such-invitation', `No unused invitation has the id "${id}".`);
      return c.body(null, 204);
    })
    .openapi(setRole, async (c) => {
      const { person: id } = c.req.valid('param');
      const { role } = await smallBodyOf(c, roleBody);
      refuse(await c.var.stores.people.setRole(id, role), id);
      return c.body(null, 204);
    })
    .openapi(close, async (c) => {
      const { person: id } = c.req.valid('param');
      refuse(await c.var.stores.people.close(id), id);
      return c.body(null, 204);
    })
    .openapi(inviteToPassword, async (c) => {
      const { person: id } = c.req.valid('param');
      const { people } = c.var.stores;
      const whose = (await people.list()).find((one) => one.id === id && one.closedAt === null);
      if (whose === undefined) throw noSuchPerson(id);
      const { name, role } = whose;
      return c.json(await madeInvitationOf(people, { name, role, accountId: id }, now()), 201);
    });
  app.openAPIRegistry.register('Invite', inviteBody);
  app.openAPIRegistry.register('SetRole', roleBody);
  return app;
}
