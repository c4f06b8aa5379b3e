import { madeInvitationOf } from '../../api/http/routes/people.ts';
import { type PeopleCommand, refuse, say } from './with-store.ts';

/** Makes a link by which somebody sets up an account. */
export const invite: PeopleCommand = async ({ signIn, firm }, { firmId, name, role }) => {
  if (!(await signIn.firmIds()).includes(firmId))
    return refuse(`Firm ${firmId} has nobody yet: set up its owner first.`);
  const { people } = await firm(firmId);
  const { token, expiresAt } = await madeInvitationOf(people, { name, role, accountId: null }, new Date());
  const origin = process.env.PUBLIC_URL?.trim().replace(/\/$/, '') || 'https://(the server’s address)';
  say(
    `${name} sets up an account as ${role} by this link, once, until ${expiresAt.slice(0, 10)}:\n${origin}/invitation#${token}`,
  );
  return 0;
};
