import { and, asc, eq, isNull, lt, ne, sql } from 'drizzle-orm';
import type { Database } from './open-database.ts';
import { invitationColumns } from './people-store.ts';
import type { Account, InvitationUsed, SignInStore } from './people-stores.ts';
import { accounts } from './schema/accounts.ts';
import { firms } from './schema/firms.ts';
import { invitations } from './schema/invitations.ts';
import { sessions } from './schema/sessions.ts';

const accountColumns = {
  firmId: accounts.firmId,
  id: accounts.accountId,
  name: accounts.name,
  email: accounts.email,
  role: accounts.role,
  passwordHash: accounts.passwordHash,
};

/** Where, and by which clock. */
interface Place {
  readonly database: Database;
  readonly now: () => Date;
}

type AccountKey = Pick<Account, 'firmId' | 'id'>;

const thisAccount = ({ firmId, id }: AccountKey) =>
  and(eq(accounts.firmId, firmId), eq(accounts.accountId, id), isNull(accounts.closedAt));

/** True while no open account has an address. */
const isFree = (email: string) =>
  sql`not exists (select 1 from ${accounts} where email = ${email} and closed_at is null)`;

async function open({ database, now }: Place, account: Account): Promise<boolean> {
  const { firmId, id, name, email, role, passwordHash } = account;
  const [, made] = await database.write((writer) =>
    writer.batch([
      writer.insert(firms).values({ firmId }).onConflictDoNothing(),
      writer.all<{ account_id: string }>(sql`
        insert into ${accounts} (firm_id, account_id, name, email, role, password_hash, since)
        select ${firmId}, ${id}, ${name}, ${email}, ${role}, ${passwordHash}, ${now().toISOString()}
        where ${isFree(email)} returning account_id`),
    ]),
  );
  return made.length > 0;
}

async function setPassword(
  { database }: Place,
  of: AccountKey,
  passwordHash: string,
  keep = '',
): Promise<boolean> {
  const [set] = await database.write((writer) =>
    writer.batch([
      writer
        .update(accounts)
        .set({ passwordHash })
        .where(thisAccount(of))
        .returning({ id: accounts.accountId }),
      writer
        .delete(sessions)
        .where(
          and(eq(sessions.firmId, of.firmId), eq(sessions.accountId, of.id), ne(sessions.tokenHash, keep)),
        ),
    ]),
  );
  return set.length > 0;
}

async function useInvitation(
  place: Place,
  tokenHash: string,
  made: Parameters<SignInStore['useInvitation']>[1],
): Promise<InvitationUsed> {
  const { database, now } = place;
  const [invited] = await database.reader
    .select({ firmId: invitations.firmId, ...invitationColumns })
    .from(invitations)
    .where(and(eq(invitations.tokenHash, tokenHash), isNull(invitations.usedAt)));
  if (invited === undefined) return { outcome: 'no-such-invitation' };
  const { firmId, accountId, role } = invited;
  const at = now().toISOString();
  const isNew = accountId === null;
  const account = { firmId, id: accountId ?? made.id };
  const mayUse = isNew
    ? isFree(made.email)
    : sql`exists (select 1 from ${accounts} where firm_id = ${firmId} and account_id = ${accountId} and closed_at is null)`;
  const [used] = await database.write((writer) =>
    writer.batch([
      writer
        .update(invitations)
        .set({ usedAt: at })
        .where(and(eq(invitations.tokenHash, tokenHash), isNull(invitations.usedAt), mayUse))
        .returning({ id: invitations.invitationId }),
      // Each hangs on the one before it, so that all are written or none.
      writer.all(
        isNew
          ? sql`insert into ${accounts} (firm_id, account_id, name, email, role, password_hash, since)
              select ${firmId}, ${made.id}, ${made.name}, ${made.email}, ${role}, ${made.passwordHash}, ${at}
              where changes() > 0 returning account_id`
          : sql`update ${accounts} set password_hash = ${made.passwordHash}
              where changes() > 0 and firm_id = ${firmId} and account_id = ${accountId} returning account_id`,
      ),
      writer
        .delete(sessions)
        .where(and(eq(sessions.firmId, firmId), eq(sessions.accountId, account.id), sql`changes() > 0`)),
    ]),
  );
  if (used.length > 0) return { outcome: 'used', account };
  const there = await place.database.reader
    .select({ id: invitations.invitationId })
    .from(invitations)
    .where(and(eq(invitations.tokenHash, tokenHash), isNull(invitations.usedAt)));
  return { outcome: there.length > 0 && isNew ? 'email-taken' : 'no-such-invitation' };
}

/** Sessions in a database. */
function sessionsOf({ database, now }: Place) {
  const thisSession = (tokenHash: string) => eq(sessions.tokenHash, tokenHash);
  return {
    beginSession: async ({ firmId, id }: AccountKey, tokenHash: string) => {
      const at = now().toISOString();
      await database.write((writer) =>
        writer.insert(sessions).values({ firmId, accountId: id, tokenHash, beganAt: at, seenAt: at }),
      );
    },
    session: async (tokenHash: string) => {
      const [row] = await database.reader
        .select({ ...accountColumns, beganAt: sessions.beganAt, seenAt: sessions.seenAt })
        .from(sessions)
        .innerJoin(
          accounts,
          and(eq(accounts.firmId, sessions.firmId), eq(accounts.accountId, sessions.accountId)),
        )
        .where(and(thisSession(tokenHash), isNull(accounts.closedAt)));
      if (row === undefined) return null;
      const { beganAt, seenAt, ...account } = row;
      return { account, beganAt, seenAt };
    },
    noteSeen: async (tokenHash: string) => {
      const seenAt = now().toISOString();
      await database.write((writer) => writer.update(sessions).set({ seenAt }).where(thisSession(tokenHash)));
    },
    endSession: async (tokenHash: string) => {
      await database.write((writer) => writer.delete(sessions).where(thisSession(tokenHash)));
    },
    sweepSessions: async (before: string) => {
      await database.write((writer) => writer.delete(sessions).where(lt(sessions.beganAt, before)));
    },
  };
}

/** Who signs in, over all firms of a database. */
export function signInStore(database: Database, now: () => Date): SignInStore {
  const place: Place = { database, now };
  return {
    ...sessionsOf(place),
    account: async (email) => {
      const [row] = await database.reader
        .select(accountColumns)
        .from(accounts)
        .where(and(eq(accounts.email, email), isNull(accounts.closedAt)));
      return row ?? null;
    },
    hasOwner: async () => {
      const [row] = await database.reader
        .select({ id: accounts.accountId })
        .from(accounts)
        .where(and(eq(accounts.role, 'owner'), isNull(accounts.closedAt)))
        .limit(1);
      return row !== undefined;
    },
    firmIds: async () => {
      const rows = await database.reader
        .select({ firmId: accounts.firmId })
        .from(accounts)
        .groupBy(accounts.firmId)
        .orderBy(asc(accounts.firmId));
      return rows.map(({ firmId }) => firmId);
    },
    open: (account) => open(place, account),
    setPassword: (of, passwordHash, keep) => setPassword(place, of, passwordHash, keep),
    invitation: async (tokenHash) => {
      const [row] = await database.reader
        .select({ firmId: invitations.firmId, ...invitationColumns })
        .from(invitations)
        .where(and(eq(invitations.tokenHash, tokenHash), isNull(invitations.usedAt)));
      return row ?? null;
    },
    useInvitation: (tokenHash, made) => useInvitation(place, tokenHash, made),
  };
}
