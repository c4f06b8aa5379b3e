/** What somebody may do: all; all but people and erasing; read and fetch papers. */
export const roles = ['owner', 'estimator', 'read-only'] as const;
export type Role = (typeof roles)[number];

/** Somebody with an account; times are ISO 8601 in UTC. */
export interface Person {
  readonly id: string;
  readonly name: string;
  /** In lower case. */
  readonly email: string;
  readonly role: Role;
  readonly since: string;
  /** Null while it is open. */
  readonly closedAt: string | null;
}

/** An account with the firm that it is of. */
export interface Account extends Pick<Person, 'id' | 'name' | 'email' | 'role'> {
  readonly firmId: string;
  readonly passwordHash: string;
}

/** A link by which a password is set, without the link. */
export interface Invitation {
  readonly id: string;
  /** Whom it is for, as the owner wrote it. */
  readonly name: string;
  readonly role: Role;
  /** Whose password is set anew; null: a new account. */
  readonly accountId: string | null;
  readonly madeAt: string;
  readonly expiresAt: string;
}

/** What came of a change of somebody's account; a firm keeps an owner. */
export type PersonChanged = 'done' | 'no-such-person' | 'last-owner';

/** The people of one firm. */
export interface PeopleStore {
  /** Open accounts by name, then closed ones. */
  list(): Promise<readonly Person[]>;
  /** Those that were not used yet, the newest first, spent ones among them. */
  invitations(): Promise<readonly Invitation[]>;
  /** Keeps an invitation; an earlier one for the same account is let go of. */
  invite(made: Omit<Invitation, 'madeAt'> & { readonly tokenHash: string }): Promise<void>;
  /** False where there is none that was not used. */
  withdraw(invitationId: string): Promise<boolean>;
  /** As all changes of an account, it ends its sessions. */
  setRole(id: string, role: Role): Promise<PersonChanged>;
  close(id: string): Promise<PersonChanged>;
}

/** A session with whose it is. */
export interface StoredSession {
  readonly account: Account;
  readonly beganAt: string;
  readonly seenAt: string;
}

/** What came of a link by which a password is set. */
export type InvitationUsed =
  | { readonly outcome: 'used'; readonly account: Pick<Account, 'firmId' | 'id'> }
  | { readonly outcome: 'no-such-invitation' }
  | { readonly outcome: 'email-taken' };

/** Who signs in, over all firms: nobody is known to be of one before. */
export interface SignInStore {
  /** The open account of an address in lower case. */
  account(email: string): Promise<Account | null>;
  /** True where some open account may do all. */
  hasOwner(): Promise<boolean>;
  /** The firms that have people, by id. */
  firmIds(): Promise<readonly string[]>;
  /** Enters an account of a firm that may be new; false where its address is taken. */
  open(account: Omit<Account, 'id'> & { readonly id: string }): Promise<boolean>;
  /** Sets a password, and ends the sessions of its account but for one. */
  setPassword(
    of: Pick<Account, 'firmId' | 'id'>,
    passwordHash: string,
    keepTokenHash?: string,
  ): Promise<boolean>;
  beginSession(of: Pick<Account, 'firmId' | 'id'>, tokenHash: string): Promise<void>;
  /** Null where there is none, or its account is closed. */
  session(tokenHash: string): Promise<StoredSession | null>;
  noteSeen(tokenHash: string): Promise<void>;
  endSession(tokenHash: string): Promise<void>;
  /** Removes sessions that began before a moment, ISO 8601 in UTC. */
  sweepSessions(before: string): Promise<void>;
  /** One that was not used; whether it is spent is told by its times. */
  invitation(tokenHash: string): Promise<(Invitation & { readonly firmId: string }) | null>;
  /** Uses an invitation up, once: makes its account, or sets the password of the one that it names. */
  useInvitation(
    tokenHash: string,
    made: {
      readonly id: string;
      readonly name: string;
      readonly email: string;
      readonly passwordHash: string;
    },
  ): Promise<InvitationUsed>;
}

/** How guesses are slowed down. */
export interface WaitRule {
  /** So many may follow each other at once. */
  readonly free: number;
  /** The wait after the first beyond those, ms; doubled with each. */
  readonly firstMs: number;
  readonly mostMs: number;
}

/** What guesses are counted by. */
export interface Counted {
  readonly key: string;
  readonly rule: WaitRule;
}

/** Guesses of late; kept in the store, so that a server that is started anew, or a second one, counts on. */
export interface AttemptStore {
  /** Counts one more by each, and gives 0; where one has to wait, nothing is counted, and the wait is given, ms. */
  take(by: readonly Counted[]): Promise<number>;
  /** Forgets what was counted: the guess was right. */
  clear(key: string): Promise<void>;
  /** Takes back one that was counted. */
  giveBack(key: string): Promise<void>;
}

/** A link by which a customer sees one quotation, without the link. */
export interface QuotationLink {
  readonly id: string;
  readonly quotationId: string;
  readonly madeAt: string;
  readonly expiresAt: string;
  readonly withdrawnAt: string | null;
}

/** Where a link leads. */
export interface LinkedQuotation extends QuotationLink {
  readonly firmId: string;
  readonly jobId: string;
}

/** The links of one firm's quotations. */
export interface LinkStore {
  /** Of a job, the newest first. */
  list(jobId: string): Promise<readonly QuotationLink[]>;
  make(
    made: Omit<LinkedQuotation, 'firmId' | 'madeAt' | 'withdrawnAt'> & { readonly tokenHash: string },
  ): Promise<QuotationLink>;
  /** Null where there is no such link of that quotation; one that is withdrawn stays as it is. */
  withdraw(jobId: string, quotationId: string, linkId: string): Promise<QuotationLink | null>;
}
