import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { attemptStore } from '../../api/db/attempt-store.ts';
import { linkedQuotation } from '../../api/db/link-store.ts';
import { signInStore } from '../../api/db/sign-in-store.ts';
import type { Stores } from '../../api/db/stores.ts';
import { tagOf } from '../../api/db/tag-of.ts';
import { createApp } from '../../api/http/app.ts';
import type { AppParts, AppSettings } from '../../api/http/app-parts.ts';
import { etagOf } from '../../api/http/revision-headers.ts';
import { scryptPasswords } from '../../api/http/sign-in/password-hash.ts';
import { freshStores, testDatabase } from './test-stores.ts';

/** The project's folder. */
export const projectRoot = fileURLToPath(new URL('../..', import.meta.url));

/** The text of a demo job's file. */
export const demoText = (name: string): string =>
  readFileSync(new URL(`../../data/jobs/${name}.json`, import.meta.url), 'utf8');

/** The demo job that most tests keep. */
export const saltglass: string = demoText('saltglass-row');

/** Its id. */
export const saltglassId: string = JSON.parse(saltglass).id;

/** The ETag of a text under a revision's number. */
export const etagFor = (revision: number, text: string): string => etagOf({ revision, tag: tagOf(text) });

/** A demo job's text with another id, and other keys if wanted. */
export const variantOf = (text: string, changes: Readonly<Record<string, unknown>>): string =>
  JSON.stringify({ ...JSON.parse(text), ...changes });

const settings: AppSettings = {
  screenFolder: '/there/is/no/such/folder',
  version: '1.2.3',
  hostNames: ['workbench'],
  publicOrigin: null,
  tls: null,
  signIn: false,
  secureCookies: false,
};

/** What went wrong on the server, line by line with what was thrown. */
export interface Complaint {
  readonly line: string;
  readonly error: unknown;
}

interface TestApp {
  readonly app: ReturnType<typeof createApp>;
  readonly stores: Stores;
  readonly complaints: Complaint[];
  /** Sends JSON text with an unsafe method. */
  readonly send: (
    method: 'POST' | 'PUT' | 'DELETE',
    path: string,
    body?: string,
    headers?: Readonly<Record<string, string>>,
  ) => Promise<Response>;
  readonly get: (path: string, headers?: Readonly<Record<string, string>>) => Promise<Response>;
}

/** An app over empty stores, at nine o’clock on 25 November 2026. */
export async function testApp(
  changes: Partial<Omit<AppParts, 'settings'>> & {
    readonly stores?: Stores;
    readonly settings?: Partial<AppSettings>;
  } = {},
): Promise<TestApp> {
  const complaints: Complaint[] = [];
  const { stores: given, ...others } = changes;
  const stores = given ?? (await freshStores());
  const database = await testDatabase();
  const now = () => new Date('2026-11-25T09:00:00Z');
  const app = createApp({
    demoJobs: [saltglass, demoText('fernlow-close')],
    demoLibrary: demoLibrary(),
    now,
    storesFor: async () => stores,
    signIn: signInStore(database, now),
    attempts: attemptStore(database, now),
    passwords: scryptPasswords({ logN: 10, r: 8, p: 1 }),
    linked: (tokenHash) => linkedQuotation(database, tokenHash),
    log: {
      say: () => {},
      complain: (line, error) => {
        complaints.push({ line, error });
      },
      request: () => {},
    },
    probe: async () => {},
    ...others,
    settings: { ...settings, ...changes.settings },
  });
  return {
    app,
    stores,
    complaints,
    send: async (method, path, body, headers = {}) =>
      app.request(path, {
        method,
        headers: { ...(body === undefined ? {} : { 'content-type': 'application/json' }), ...headers },
        ...(body === undefined ? {} : { body }),
      }),
    get: async (path, headers = {}) => app.request(path, { headers }),
  };
}
