import { OWN_FIRM } from '../../api/db/stores-of.ts';
import { type PeopleCommand, say } from './with-store.ts';

/** Says who has an account and who is invited; of every firm where none is named. */
export const listPeople: PeopleCommand = async ({ signIn, firm }, { firmId }) => {
  const known = await signIn.firmIds();
  const wanted = firmId === OWN_FIRM ? known : known.filter((one) => one === firmId);
  if (wanted.length === 0) say('Nobody has an account yet.');
  for (const one of wanted) {
    const { people } = await firm(one);
    say(`Firm ${one}`);
    for (const { name, email, role, since, closedAt } of await people.list())
      say(
        `  ${name}, ${email}: ${closedAt === null ? `${role}, since ${since.slice(0, 10)}` : `closed on ${closedAt.slice(0, 10)}`}`,
      );
    for (const { name, role, expiresAt } of await people.invitations())
      say(`  ${name}: invited as ${role}, until ${expiresAt.slice(0, 10)}`);
  }
  return 0;
};
