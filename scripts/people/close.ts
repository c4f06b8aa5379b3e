import { type PeopleCommand, refuse, say } from './with-store.ts';

/** Closes an account. */
export const closeAccount: PeopleCommand = async ({ signIn, firm }, { email }) => {
  const account = await signIn.account(email);
  if (account === null) return refuse(`Nobody signs in as ${email}.`);
  const { people } = await firm(account.firmId);
  const closed = await people.close(account.id);
  if (closed === 'last-owner')
    return refuse(`${account.name} is the firm’s only owner: set up another first.`);
  if (closed !== 'done') return refuse(`Nobody signs in as ${email}.`);
  say(`${account.name} signs in no longer; every session has ended.`);
  return 0;
};
