import { scryptPasswords } from '../../api/http/sign-in/password-hash.ts';
import { readPassword } from './read-password.ts';
import { type PeopleCommand, refuse, say } from './with-store.ts';

/** Sets a new password of an account. */
export const setPassword: PeopleCommand = async ({ signIn }, { email }) => {
  const account = await signIn.account(email);
  if (account === null) return refuse(`Nobody signs in as ${email}.`);
  const passwordHash = await scryptPasswords().hash(await readPassword());
  if (!(await signIn.setPassword(account, passwordHash))) return refuse(`Nobody signs in as ${email}.`);
  say(`${account.name} has a new password; every session has ended.`);
  return 0;
};
