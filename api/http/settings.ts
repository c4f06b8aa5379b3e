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
}

export type ReadSettings =
  | { readonly ok: true; readonly settings: Settings }
  | { readonly ok: false; readonly faults: readonly string[] };

type Environment = Readonly<Record<string, string | undefined>>;

/** A value, or what is wrong with it in words. */
type Read<Value> = { readonly value: Value } | { readonly fault: string };

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

/** Settings from the environment, or everything that is wrong with it at once; an empty value counts as absent. */
export function settingsFrom(env: Environment, surroundings: Surroundings): ReadSettings {
  const { root, hostName, isReadable } = surroundings;
  const port = readPort(given(env, 'PORT'));
  const host = readHost(given(env, 'HOST'));
  const databaseUrl = readDatabaseUrl(given(env, 'DATABASE_URL'), root);
  const tls = readTls(given(env, 'TLS_CERT'), given(env, 'TLS_KEY'), isReadable);
  const publicOrigin = readPublicOrigin(given(env, 'PUBLIC_URL'));
  if (
    'value' in port &&
    'value' in host &&
    'value' in databaseUrl &&
    'value' in tls &&
    'value' in publicOrigin
  )
    return {
      ok: true,
      settings: {
        port: port.value,
        host: host.value,
        databaseUrl: databaseUrl.value,
        tls: tls.value,
        publicOrigin: publicOrigin.value,
        hostNames: namesOf(hostName, host.value),
        screenFolder: given(env, 'SCREEN_FOLDER') ?? join(root, '.built'),
      },
    };
  const faults = [port, host, databaseUrl, tls, publicOrigin].flatMap((read) =>
    'fault' in read ? [read.fault] : [],
  );
  return { ok: false, faults };
}

const LOOPBACK = /^(?:localhost|127(?:\.\d{1,3}){3}|::1)$/i;

/** A warning for whoever lets others reach the server; null when only this machine can. */
export function reachWarning({ host, publicOrigin }: Pick<Settings, 'host' | 'publicOrigin'>): string | null {
  if (LOOPBACK.test(host) && publicOrigin === null) return null;
  const where = publicOrigin ?? `an address of this machine (HOST=${host})`;
  return `Warning: there is no sign-in yet. Everybody who reaches ${where} can read and change every job.`;
}
