import { scryptPasswords } from '../../api/http/sign-in/password-hash.ts';
import { newRecordId } from '../../api/http/sign-in/tokens.ts';
import { readPassword } from './read-password.ts';
import { type PeopleCommand, refuse, say } from './with-store.ts';

/** Sets up somebody who may do all in a firm. */
export const setUpOwner: PeopleCommand = async ({ signIn }, { firmId, name, email }) => {
  const taken = `${email} has an account already. Give it a new password: npm run people -- password --email ${email}`;
  // Before a password is asked for in vain.
  if ((await signIn.account(email)) !== null) return refuse(taken);
  const passwordHash = await scryptPasswords().hash(await readPassword());
  const account = { id: newRecordId(), firmId, name, email, role: 'owner', passwordHash } as const;
  if (!(await signIn.open(account))) return refuse(taken);
  say(`${name} is an owner and signs in as ${email}.`);
  return 0;
};
