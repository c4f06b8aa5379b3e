import { and, asc, desc, eq, isNull, sql } from 'drizzle-orm';
import type { Database } from './open-database.ts';
import type { PeopleStore, PersonChanged } from './people-stores.ts';
import { accounts } from './schema/accounts.ts';
import { invitations } from './schema/invitations.ts';
import { sessions } from './schema/sessions.ts';

/** Whose people, where, and by which clock. */
interface Scope {
  readonly database: Database;
  readonly firmId: string;
  readonly now: () => Date;
}

const isOpen = ({ firmId }: Scope, id: string) =>
  and(eq(accounts.firmId, firmId), eq(accounts.accountId, id), isNull(accounts.closedAt));

/** True where another open account of the firm may do all. */
const hasOtherOwner = ({ firmId }: Scope, id: string) =>
  sql`exists (select 1 from accounts as other where other.firm_id = ${firmId} and other.account_id <> ${id}
    and other.role = 'owner' and other.closed_at is null)`;

/** Changes an open account unless the firm would have no owner then, and ends its sessions. */
async function change(
  scope: Scope,
  id: string,
  values: Partial<Pick<typeof accounts.$inferInsert, 'role' | 'closedAt'>>,
): Promise<PersonChanged> {
  const { database, firmId } = scope;
  const staysOwner = values.role === 'owner' ? sql`true` : sql`${accounts.role} <> 'owner'`;
  const [changed] = await database.write((writer) =>
    writer.batch([
      writer
        .update(accounts)
        .set(values)
        .where(and(isOpen(scope, id), sql`(${staysOwner} or ${hasOtherOwner(scope, id)})`))
        .returning({ id: accounts.accountId }),
      writer
        .delete(sessions)
        .where(and(eq(sessions.firmId, firmId), eq(sessions.accountId, id), sql`changes() > 0`)),
    ]),
  );
  if (changed.length > 0) return 'done';
  const there = await database.reader
    .select({ id: accounts.accountId })
    .from(accounts)
    .where(isOpen(scope, id));
  return there.length === 0 ? 'no-such-person' : 'last-owner';
}

/** The people of one firm in a database. */
export function peopleStore(database: Database, firmId: string, now: () => Date): PeopleStore {
  const scope: Scope = { database, firmId, now };
  return {
    list: () =>
      database.reader
        .select(personColumns)
        .from(accounts)
        .where(eq(accounts.firmId, firmId))
        .orderBy(asc(sql`${accounts.closedAt} is not null`), asc(accounts.name), asc(accounts.accountId)),
    invitations: () =>
      database.reader
        .select(invitationColumns)
        .from(invitations)
        .where(and(eq(invitations.firmId, firmId), isNull(invitations.usedAt)))
        .orderBy(desc(invitations.madeAt), asc(invitations.invitationId)),
    invite: async ({ id, ...made }) => {
      const values = { firmId, invitationId: id, madeAt: now().toISOString(), ...made };
      const before = and(
        eq(invitations.firmId, firmId),
        eq(invitations.accountId, made.accountId ?? ''),
        isNull(invitations.usedAt),
      );
      await database.write((writer) =>
        writer.batch([writer.delete(invitations).where(before), writer.insert(invitations).values(values)]),
      );
    },
    withdraw: async (invitationId) => {
      const gone = await database.write((writer) =>
        writer
          .delete(invitations)
          .where(
            and(
              eq(invitations.firmId, firmId),
              eq(invitations.invitationId, invitationId),
              isNull(invitations.usedAt),
            ),
          )
          .returning({ id: invitations.invitationId }),
      );
      return gone.length > 0;
    },
    setRole: (id, role) => change(scope, id, { role }),
    close: (id) => change(scope, id, { closedAt: now().toISOString() }),
  };
}

const personColumns = {
  id: accounts.accountId,
  name: accounts.name,
  email: accounts.email,
  role: accounts.role,
  since: accounts.since,
  closedAt: accounts.closedAt,
};

/** What an invitation is told as. */
export const invitationColumns = {
  id: invitations.invitationId,
  name: invitations.name,
  role: invitations.role,
  accountId: invitations.accountId,
  madeAt: invitations.madeAt,
  expiresAt: invitations.expiresAt,
};
