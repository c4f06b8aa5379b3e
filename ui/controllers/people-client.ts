import type { Role } from '../rights.ts';
import type { ApiClient } from './api-client.ts';

/** Somebody with an account. */
export interface Person {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly since: string;
  /** Null while it is open. */
  readonly closedAt: string | null;
}

/** A link by which a password is set, without the link. */
export interface Invitation {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly accountId: string | null;
  readonly expiresAt: string;
}

/** One that was just made, with what its link ends in. */
export interface MadeInvitation extends Invitation {
  readonly token: string;
}

/** What there is of the firm's people. */
export interface PeopleList {
  readonly people: readonly Person[];
  readonly invitations: readonly Invitation[];
}

/** Speaks to the server of people; every refusal, and no answer at all, is a `ServerRefusal`. */
export class PeopleClient {
  readonly #api: Pick<ApiClient, 'ask'>;

  constructor(api: Pick<ApiClient, 'ask'>) {
    this.#api = api;
  }

  async list(): Promise<PeopleList> {
    return (await (await this.#api.ask('GET', '/api/people')).json()) as PeopleList;
  }

  async invite(name: string, role: Role): Promise<MadeInvitation> {
    const body = JSON.stringify({ name, role });
    return (await (
      await this.#api.ask('POST', '/api/people/invitations', { body })
    ).json()) as MadeInvitation;
  }

  async withdraw(id: string): Promise<void> {
    await this.#api.ask('DELETE', `/api/people/invitations/${id}`);
  }

  async setRole(id: string, role: Role): Promise<void> {
    await this.#api.ask('PUT', `/api/people/${id}/role`, { body: JSON.stringify({ role }) });
  }

  async close(id: string): Promise<void> {
    await this.#api.ask('DELETE', `/api/people/${id}`);
  }

  async linkForPassword(id: string): Promise<MadeInvitation> {
    return (await (await this.#api.ask('POST', `/api/people/${id}/password`)).json()) as MadeInvitation;
  }

  async changePassword(current: string, password: string): Promise<void> {
    await this.#api.ask('PUT', '/api/session/password', { body: JSON.stringify({ current, password }) });
  }
}
