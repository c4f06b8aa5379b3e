import { isIP } from 'node:net';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** What the settings are read beside: the machine and the checkout. */
export interface Surroundings {
  /** The project's folder, absolute. */
  readonly root: string;
  /** What the machine calls itself. */
  readonly hostName: string;
  readonly isReadable: (path: string) => boolean;
}

/** How the server runs. */
export interface Settings {
  /** 0: any that is free. */
  readonly port: number;
  readonly host: string;
  readonly databaseUrl: string;
  /** Null: plain HTTP. */
  readonly tls: { readonly certPath: string; readonly keyPath: string } | null;
  /** The origin that browsers see when a proxy stands before the server, without a slash at its end. */
  readonly publicOrigin: string | null;
  /** The names that this machine goes by, in lower case. */
  readonly hostNames: readonly string[];
  /** The folder of the built screen, absolute: `SCREEN_FOLDER`, so that a build for tests leaves the one in use alone. */
  readonly screenFolder: string;
  /** False where only this machine reaches the server: nobody signs in then. */
  readonly signIn: boolean;
  /** True where browsers reach the server by TLS alone. */
  readonly secureCookies: boolean;
}

export type ReadSettings =
  | { readonly ok: true; readonly settings: Settings }
  | { readonly ok: false; readonly faults: readonly string[] };

/** What settings are read from. */
export type Environment = Readonly<Record<string, string | undefined>>;

/** A value, or what is wrong with it in words. */
export type Read<Value> = { readonly value: Value } | { readonly fault: string };

const DEFAULT_PORT = 4310;
const DEFAULT_HOST = '127.0.0.1';
const DATABASE_SCHEMES = new Set(['file:', 'libsql:', 'http:', 'https:', 'ws:', 'wss:']);

const given = (env: Environment, name: string): string | null => env[name]?.trim() || null;

function readPort(text: string | null): Read<number> {
  if (text === null) return { value: DEFAULT_PORT };
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  return port <= 65_535
    ? { value: port }
    : { fault: `PORT is "${text}"; it must be a whole number from 0 (any free port) to 65535.` };
}

function readHost(text: string | null): Read<string> {
  const host = text ?? DEFAULT_HOST;
  return isIP(host) !== 0 || /^[A-Za-z0-9][A-Za-z0-9.-]*$/.test(host)
    ? { value: host }
    : { fault: `HOST is "${host}"; it must be an address or a name alone, such as 127.0.0.1 or 0.0.0.0.` };
}

/** The text is not repeated in a fault: it may carry a password. */
function readDatabaseUrl(text: string | null, root: string): Read<string> {
  if (text === null) return { value: pathToFileURL(join(root, '.ringwright', 'ringwright.db')).href };
  const scheme = /^[a-z]+:/.exec(text)?.[0] ?? '';
  return DATABASE_SCHEMES.has(scheme)
    ? { value: text }
    : { fault: 'DATABASE_URL must begin with file:, libsql:, https:, http:, wss: or ws:.' };
}

/** Where the store is, for commands beside the server; as the server has it. */
export const databaseUrlFrom = (env: Environment, root: string): Read<string> =>
  readDatabaseUrl(given(env, 'DATABASE_URL'), root);

function readTls(
  certPath: string | null,
  keyPath: string | null,
  isReadable: (path: string) => boolean,
): Read<Settings['tls']> {
  if (certPath === null && keyPath === null) return { value: null };
  if (certPath === null || keyPath === null)
    return {
      fault: `${certPath === null ? 'TLS_KEY' : 'TLS_CERT'} is set without ${certPath === null ? 'TLS_CERT' : 'TLS_KEY'}; set both or neither.`,
    };
  const unreadable = [
    ['TLS_CERT', certPath],
    ['TLS_KEY', keyPath],
  ].filter(([, path]) => path !== undefined && !isReadable(path));
  return unreadable.length === 0
    ? { value: { certPath, keyPath } }
    : { fault: unreadable.map(([name, path]) => `${name} names ${path}, which cannot be read.`).join(' ') };
}

function readPublicOrigin(text: string | null): Read<string | null> {
  if (text === null) return { value: null };
  const url = URL.canParse(text) ? new URL(text) : null;
  const bare = url !== null && url.pathname === '/' && url.search + url.hash + url.username === '';
  return url !== null && bare && url.protocol === 'https:'
    ? { value: url.origin }
    : { fault: `PUBLIC_URL is "${text}"; it must be an https origin alone, such as https://jobs.example.` };
}

function namesOf(hostName: string, host: string): readonly string[] {
  const own = hostName.toLowerCase();
  const names = [own, own.endsWith('.local') ? own : `${own}.local`, host.toLowerCase()];
  return [...new Set(names)].filter((name) => name !== '' && name !== '.local' && isIP(name) === 0);
}

/** Whether others reach the server, and by what. */
interface Reached {
  readonly signIn: boolean;
  readonly secureCookies: boolean;
}

/**
 * Whoever listens to others has them sign in; over plain HTTP a password goes readable through the network, so that one is
 * trusted by name or not at all.
 */
function readReach(
  trusted: string | null,
  { host, tls, publicOrigin }: Pick<Settings, 'host' | 'tls' | 'publicOrigin'>,
): Read<Reached> {
  if (trusted !== null && trusted !== 'yes')
    return { fault: `TRUSTED_NETWORK is "${trusted}"; it must be yes, or left out.` };
  const signIn = !LOOPBACK.test(host) || publicOrigin !== null;
  const secureCookies = tls !== null || publicOrigin !== null;
  return !signIn || secureCookies || trusted !== null
    ? { value: { signIn, secureCookies } }
    : {
        fault: `HOST=${host} would send passwords and jobs readable through the network. Set TLS_CERT and TLS_KEY, or PUBLIC_URL with a proxy that speaks TLS; or TRUSTED_NETWORK=yes, if everybody in that network may read along.`,
      };
}

const valueIn = <Value>(read: Read<Value>, otherwise: Value): Value =>
  'value' in read ? read.value : otherwise;

/** Settings from the environment, or everything that is wrong with it at once; an empty value counts as absent. */
export function settingsFrom(env: Environment, surroundings: Surroundings): ReadSettings {
  const { root, hostName, isReadable } = surroundings;
  const port = readPort(given(env, 'PORT'));
  const host = readHost(given(env, 'HOST'));
  const databaseUrl = readDatabaseUrl(given(env, 'DATABASE_URL'), root);
  const tls = readTls(given(env, 'TLS_CERT'), given(env, 'TLS_KEY'), isReadable);
  const publicOrigin = readPublicOrigin(given(env, 'PUBLIC_URL'));
  const listening = {
    host: valueIn(host, DEFAULT_HOST),
    tls: valueIn(tls, null),
    publicOrigin: valueIn(publicOrigin, null),
  };
  // What is wrong with the others is mended first: whether passwords go in the open hangs on them.
  const isReachKnown = 'value' in host && 'value' in tls && 'value' in publicOrigin;
  const reach: Read<Reached> = isReachKnown
    ? readReach(given(env, 'TRUSTED_NETWORK'), listening)
    : { value: { signIn: true, secureCookies: true } };
  const faults = [port, host, databaseUrl, tls, publicOrigin, reach].flatMap((read) =>
    'fault' in read ? [read.fault] : [],
  );
  if (faults.length > 0) return { ok: false, faults };
  return {
    ok: true,
    settings: {
      port: valueIn(port, DEFAULT_PORT),
      databaseUrl: valueIn(databaseUrl, ''),
      ...listening,
      ...valueIn(reach, { signIn: true, secureCookies: true }),
      hostNames: namesOf(hostName, listening.host),
      screenFolder: given(env, 'SCREEN_FOLDER') ?? join(root, '.built'),
    },
  };
}

const LOOPBACK = /^(?:localhost|127(?:\.\d{1,3}){3}|::1)$/i;

/** A warning for whoever lets others reach the server unencrypted; null when nobody reads along. */
export function reachWarning({ host, signIn, secureCookies }: Settings): string | null {
  if (!signIn || secureCookies) return null;
  return `Warning: TRUSTED_NETWORK is set and HOST=${host} speaks plain HTTP. Everybody in that network can read passwords and jobs as they go by.`;
}
