import { forgetFirm, OWN_FIRM, rememberWho, whoWasHere } from '../device/who-was-here.ts';
import { errorWords } from '../error-words.ts';
import { type Role, setRole } from '../rights.ts';
import { ApiClient, ServerRefusal } from './api-client.ts';

/** Who is signed in, as the server says. */
export interface Session {
  /** False where nobody has to. */
  readonly signIn: boolean;
  readonly firm: string | null;
  readonly role: Role | null;
  readonly person: { readonly id: string; readonly name: string; readonly email: string } | null;
  /** Where others reach the server; null: where this page came from. */
  readonly publicOrigin: string | null;
}

/**
 * `asking`: it is not known yet; `here`: somebody who may work; `out`: nobody is signed in; `over`: their session ended
 * while they worked, and what they do is kept on the device until they sign in again.
 */
export type Presence = 'asking' | 'here' | 'out' | 'over';

/** The name of the header by which the server knows which firm a screen takes itself to be of. */
const FIRM_HEADER = 'ringwright-firm';

/** What it works with; a test brings its own. */
export interface HereParts {
  readonly fetch: typeof fetch;
  /** Loads the page anew: for another firm nothing of the page goes on. */
  readonly reload: () => void;
}

/** Who is at this screen: asked at the start, told when a session ends. */
export class WhoIsHere {
  presence: Presence = 'asking';
  session: Session | null = null;
  #firm: string | null = null;
  readonly #parts: HereParts;
  readonly #client: ApiClient;
  readonly #watchers = new Set<() => void>();

  constructor(
    parts: HereParts = { fetch: (input, init) => fetch(input, init), reload: () => location.reload() },
  ) {
    this.#parts = parts;
    this.#client = new ApiClient(parts.fetch);
  }

  /** The firm whose jobs are on this screen. */
  get firm(): string {
    return this.#firm ?? OWN_FIRM;
  }

  get role(): Role {
    return this.session?.role ?? whoWasHere()?.role ?? 'owner';
  }

  /** Tells of every change; what is given back ends that. */
  watch(changed: () => void): () => void {
    this.#watchers.add(changed);
    return () => this.#watchers.delete(changed);
  }

  #become(presence: Presence): void {
    this.presence = presence;
    for (const told of this.#watchers) told();
  }

  /** It is who was here last, unless they signed out; meanwhile the server is asked, which may take its time. */
  async start(): Promise<void> {
    const before = whoWasHere();
    if (before?.isOut === false) this.#goOn(before);
    try {
      this.#take(await this.#ask());
    } catch {
      if (this.presence !== 'asking') return;
      if (before?.isOut === true) this.#become('out');
      else this.#goOn({ firm: OWN_FIRM, role: 'owner' });
    }
  }

  #goOn({ firm, role }: { readonly firm: string; readonly role: Role }): void {
    this.#firm = firm;
    setRole(role);
    this.#become('here');
  }

  async #ask(): Promise<Session> {
    return (await (await this.#client.ask('GET', '/api/session')).json()) as Session;
  }

  /** Goes on as who a session says; one of another firm begins the page anew. */
  #take(session: Session): void {
    const { firm, role, person } = session;
    if (firm === null || role === null) {
      this.session = session;
      const isOut = this.#firm === null || this.presence === 'out';
      this.#become(isOut ? 'out' : 'over');
      return;
    }
    const isOther = this.#firm !== null && (this.#firm !== firm || this.role !== role);
    rememberWho({ firm, role, name: person?.name ?? null, isOut: false });
    if (isOther) {
      this.#parts.reload();
      return;
    }
    this.#firm = firm;
    this.session = session;
    setRole(role);
    this.#become('here');
  }

  /** Sends a request as of this firm, and hears when the session is over. */
  readonly fetch: typeof fetch = async (input, init) => {
    const headers = { ...(init?.headers as Record<string, string>), [FIRM_HEADER]: this.firm };
    const answer = await this.#parts.fetch(input, { ...init, headers });
    if (answer.status === 401 && this.presence === 'here') void this.#lookAgain();
    return answer;
  };

  /** Somebody may have signed out, or in, in another window. */
  async #lookAgain(): Promise<void> {
    try {
      this.#take(await this.#ask());
    } catch {
      // Without a connection nobody is asked to sign in.
    }
  }

  /** Throws a `ServerRefusal` where it is refused. */
  async signIn(email: string, password: string): Promise<void> {
    const body = JSON.stringify({ email, password });
    this.#take((await (await this.#client.ask('POST', '/api/session', { body })).json()) as Session);
  }

  /** Sets a password by an invitation, and signs in with it. */
  async useInvitation(used: {
    readonly token: string;
    readonly password: string;
    readonly name?: string;
    readonly email?: string;
  }): Promise<void> {
    const asked = await this.#client.ask('POST', '/api/invitation/use', { body: JSON.stringify(used) });
    const session = (await asked.json()) as Session;
    // Whoever was signed in here before is so no longer.
    this.#take(session);
  }

  /**
   * Signs out; throws where the server is not reached, as nobody else can end the session.
   *
   * @param keep what the device has is kept for the next sign-in: it has what was not sent.
   */
  async signOut(keep: boolean): Promise<void> {
    await this.#client.ask('DELETE', '/api/session');
    const { firm, role } = this;
    if (!keep) await forgetFirm(firm);
    rememberWho({ firm, role, name: null, isOut: true });
    this.#parts.reload();
  }
}

/** Why somebody was not let in, in words. */
export const refusedWords = (error: unknown): string =>
  error instanceof ServerRefusal && error.code === 'sign-in-refused'
    ? 'E-mail address and password do not go together.'
    : errorWords(error);
