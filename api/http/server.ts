import { accessSync, constants, readFileSync, realpathSync } from 'node:fs';
import { createServer, type RequestListener } from 'node:http';
import { createServer as createTlsServer } from 'node:https';
import { isIPv6 } from 'node:net';
import { hostname, networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { getRequestListener } from '@hono/node-server';
import { openDatabase } from '../db/open-database.ts';
import type { App } from './app.ts';
import { appOver } from './app-over.ts';
import { readDemoData } from './demo-data.ts';
import { type Log, serverLog } from './log.ts';
import { logWhenAnswered } from './request-log.ts';
import { reachWarning, type Settings, settingsFrom } from './settings.ts';

/** What a server is started with. */
export interface ServerStart {
  readonly app: App;
  readonly host: string;
  /** 0: any that is free. */
  readonly port: number;
  /** PEM texts; null: plain HTTP. */
  readonly tls: { readonly cert: string; readonly key: string } | null;
  /** Absent: requests are not logged. */
  readonly log?: Log;
  /** The longest that a stop waits for what is under way, ms. */
  readonly stopMs?: number;
}

/** The longest answer, a pack of a large house on a slow machine, takes some seconds. */
const STOP_MS = 30_000;

/** A server that listens. */
export interface RunningServer {
  /** Where it is reached, with the port that it really has. */
  readonly url: string;
  /**
   * Takes no more connections, finishes what is under way, and resolves when all are closed. A request that has not come to
   * its end after half a minute is cut off: nothing of it was done.
   */
  readonly stop: () => Promise<void>;
}

const WILDCARDS: Readonly<Record<string, string>> = { '0.0.0.0': '127.0.0.1', '::': '[::1]' };

function urlOf({ host, tls }: ServerStart, port: number): string {
  const shown = WILDCARDS[host] ?? (isIPv6(host) ? `[${host}]` : host);
  return `${tls === null ? 'http' : 'https'}://${shown}:${port}`;
}

/** Starts to listen; rejects when it cannot, with the system's own error code. */
export function startServer(start: ServerStart): Promise<RunningServer> {
  const answer = getRequestListener(start.app.fetch);
  const listener: RequestListener = (request, response) => {
    if (start.log !== undefined) logWhenAnswered(start.log, request, response);
    return answer(request, response);
  };
  const server = start.tls === null ? createServer(listener) : createTlsServer(start.tls, listener);
  const stop = (): Promise<void> =>
    new Promise((resolve) => {
      // A browser keeps its connection open after an answer; left alone, each would hold the stop up for seconds.
      const sweep = setInterval(() => server.closeIdleConnections(), 100);
      const bound = setTimeout(() => server.closeAllConnections(), start.stopMs ?? STOP_MS);
      server.close(() => {
        clearInterval(sweep);
        clearTimeout(bound);
        resolve();
      });
    });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(start.port, start.host, () => {
      server.off('error', reject);
      const address = server.address();
      const port = typeof address === 'object' && address !== null ? address.port : start.port;
      resolve({ url: urlOf(start, port), stop });
    });
  });
}

const root = fileURLToPath(new URL('../..', import.meta.url));

const log: Log = serverLog({
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  now: () => new Date(),
});

function isReadable(path: string): boolean {
  try {
    accessSync(path, constants.R_OK);
    return true;
  } catch {
    return false;
  }
}

const versionOf = (packageFile: string): string =>
  String(JSON.parse(readFileSync(packageFile, 'utf8')).version);

/** What keeps the server from starting, in one line with a remedy where there is one. */
function troubleOf(error: unknown, { host, port }: Settings): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code === 'EADDRINUSE')
    return `Port ${port} is taken, perhaps by a Ringwright that runs already. Stop that one, or choose another port: PORT=${port === 4311 ? 4312 : 4311} npm start`;
  if (code === 'EACCES')
    return `Port ${port} may not be opened by this user. Choose one from 1024 up: PORT=4310 npm start`;
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND')
    return `HOST=${host} is no address of this machine. Leave HOST out, or name one that is.`;
  if (code.startsWith('ERR_OSSL'))
    return `TLS_CERT and TLS_KEY cannot be used: both must be PEM files, and the key the certificate’s own (${code}).`;
  return error instanceof Error ? error.message : String(error);
}

/** PEM texts by their paths; what cannot be used is found out when the server is made. */
const tlsOf = (tls: Settings['tls']): ServerStart['tls'] =>
  tls === null ? null : { cert: readFileSync(tls.certPath, 'utf8'), key: readFileSync(tls.keyPath, 'utf8') };

/** Where other devices reach the server, in words; empty when only this machine does. */
function othersReach({ host, publicOrigin }: Settings, url: string): string {
  if (publicOrigin !== null) return `, for others at ${publicOrigin}`;
  if (WILDCARDS[host] === undefined) return '';
  const addresses = Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter(({ internal, family }) => !internal && family === 'IPv4')
    .map(({ address }) => url.replace(/\/\/.*(?=:\d+$)/, `//${address}`));
  return addresses.length === 0 ? '' : `, for other devices at ${addresses.join(' or ')}`;
}

async function run(settings: Settings): Promise<void> {
  const database = await openDatabase(settings.databaseUrl);
  try {
    const now = (): Date => new Date();
    const data = await readDemoData(join(root, 'data'));
    const version = versionOf(join(root, 'package.json'));
    const app = await appOver(database, { ...data, settings: { ...settings, version }, now, log });
    const { host, port } = settings;
    const server = await startServer({ app, host, port, tls: tlsOf(settings.tls), log });
    // Ready to be told to stop before anybody hears that it runs.
    const told = toldToStop();
    log.say(`Ringwright is at ${server.url}${othersReach(settings, server.url)}`);
    await told;
    await server.stop();
  } finally {
    await database.close();
  }
}

/** Resolves at the first signal to stop; a second one ends the process there and then. */
function toldToStop(): Promise<void> {
  return new Promise((resolve) => {
    let told = false;
    const stop = (): void => {
      if (told) process.exit(1);
      told = true;
      resolve();
    };
    process.on('SIGINT', stop);
    process.on('SIGTERM', stop);
  });
}

async function main(): Promise<number> {
  // Whoever reads the log may go away; that ends the log, and nothing else.
  for (const stream of [process.stdout, process.stderr]) stream.on('error', () => {});
  const read = settingsFrom(process.env, { root, hostName: hostname(), isReadable });
  if (!read.ok) {
    for (const fault of read.faults) log.complain(fault);
    return 1;
  }
  const warning = reachWarning(read.settings);
  if (warning !== null) log.complain(warning);
  try {
    await run(read.settings);
    return 0;
  } catch (error) {
    log.complain(troubleOf(error, read.settings));
    return 1;
  }
}

// Imported, this file only offers startServer; run, it is the server.
if (process.argv[1] !== undefined && realpathSync(process.argv[1]) === fileURLToPath(import.meta.url))
  process.exitCode = await main();
