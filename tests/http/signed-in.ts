import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { ownLibrary } from '#tests/engine/own-library.ts';
import { type Database, openDatabase } from '../../api/db/open-database.ts';
import type { Role } from '../../api/db/people-stores.ts';
import { signInStore } from '../../api/db/sign-in-store.ts';
import type { App } from '../../api/http/app.ts';
import { appOver } from '../../api/http/app-over.ts';
import type { AppSettings } from '../../api/http/app-parts.ts';
import { scryptPasswords } from '../../api/http/sign-in/password-hash.ts';
import { type TestClock, testClock } from '../db/test-store.ts';
import { saltglass, variantOf } from './test-app.ts';

/** What everybody of a test signs in with. */
export const PASSWORD = 'copper and oak boards';

/** As strong as tests have time for. */
export const cheapPasswords = () => scryptPasswords({ logN: 4, r: 8, p: 1 });

/** What a request is sent with beside its address. */
export interface Asking {
  readonly cookie?: string;
  readonly body?: string | Uint8Array<ArrayBuffer>;
  readonly headers?: Readonly<Record<string, string>>;
}

/** A server that others reach, over a database of its own. */
export interface SignedInApp {
  readonly app: App;
  readonly database: Database;
  readonly clock: TestClock;
  /** Everything that was logged, with what was thrown. */
  readonly logged: string[];
  readonly ask: (method: string, path: string, asking?: Asking) => Promise<Response>;
  /** Enters somebody, and gives the cookie of a session of theirs. */
  readonly person: (who: { email: string; role: Role; firmId: string; name?: string }) => Promise<string>;
  readonly signIn: (email: string, password?: string, headers?: Record<string, string>) => Promise<Response>;
}

/** The cookie that an answer sets, as it is sent back. */
export const cookieOf = (answer: Response): string =>
  (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '';

const settings: AppSettings = {
  screenFolder: '/there/is/no/such/folder',
  version: '1.2.3',
  hostNames: ['workbench'],
  publicOrigin: null,
  tls: null,
  signIn: true,
  secureCookies: false,
};

/** A server with an owner of the firm `own`, whose address is owner@own.example. */
export async function signedInApp(changes: Partial<AppSettings> = {}): Promise<SignedInApp> {
  const folder = mkdtempSync(join(process.env.SCRATCH_FOLDER ?? tmpdir(), 'signed-in-'));
  const database = await openDatabase(`file:${join(folder, 'jobs.db')}`);
  const clock = testClock('2026-11-25T09:00:00.000Z');
  const passwords = cheapPasswords();
  const store = signInStore(database, clock.now);
  const enter = async (who: { email: string; role: Role; firmId: string; name?: string }): Promise<void> => {
    const passwordHash = await passwords.hash(PASSWORD);
    await store.open({ id: who.email.replace(/\W/g, '-'), name: who.email, ...who, passwordHash });
  };
  await enter({ email: 'owner@own.example', role: 'owner', firmId: 'own' });
  const logged: string[] = [];
  const app = await appOver(database, {
    demoJobs: [saltglass],
    demoLibrary: demoLibrary(),
    settings: { ...settings, ...changes },
    now: clock.now,
    passwords,
    log: {
      say: (line) => void logged.push(line),
      complain: (line, error) =>
        void logged.push(line, error instanceof Error ? `${error.stack}` : String(error)),
      request: (line) => void logged.push(JSON.stringify(line)),
    },
  });
  const ask: SignedInApp['ask'] = async (method, path, { cookie, body, headers } = {}) =>
    app.request(path, {
      method,
      headers: {
        ...(cookie === undefined ? {} : { cookie }),
        ...(body === undefined
          ? {}
          : { 'content-type': typeof body === 'string' ? 'application/json' : 'application/octet-stream' }),
        ...headers,
      },
      ...(body === undefined ? {} : { body }),
    });
  const signIn: SignedInApp['signIn'] = (email, password = PASSWORD, headers = {}) =>
    ask('POST', '/api/session', { body: JSON.stringify({ email, password }), headers });
  return {
    app,
    database,
    clock,
    logged,
    ask,
    signIn,
    person: async (who) => {
      await enter(who);
      return cookieOf(await signIn(who.email));
    },
  };
}

/** A job of a firm alone with an issued quotation, both by these ids; the firm has prices of its own then. */
export async function issueAs(
  { ask }: SignedInApp,
  cookie: string,
  { jobId, quotationId }: { readonly jobId: string; readonly quotationId: string },
): Promise<void> {
  const prices = await ask('GET', '/api/library', { cookie });
  const ifMatch = (answer: Response) => ({ 'if-match': answer.headers.get('etag') ?? '' });
  const body = JSON.stringify(ownLibrary());
  const saved = await ask('PUT', '/api/library', { cookie, body, headers: ifMatch(prices) });
  const quoting = { schemes: ['spurs-rcbo'] };
  const job = await ask('POST', '/api/jobs', { cookie, body: variantOf(saltglass, { id: jobId, quoting }) });
  const asked = { id: quotationId, date: '2026-11-25', library: saved.headers.get('etag') };
  const issued = await ask('POST', `/api/jobs/${jobId}/quotations`, {
    cookie,
    body: JSON.stringify(asked),
    headers: ifMatch(job),
  });
  if (issued.status !== 201) throw new Error(`Not issued: ${await issued.text()}`);
}
