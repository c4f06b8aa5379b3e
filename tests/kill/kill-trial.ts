import { setTimeout as pause } from 'node:timers/promises';
import { bundledServer, type ServerProcess } from './bundled-server.ts';
import { fileFaults } from './file-checks.ts';
import { lossesOf } from './ledger.ts';
import { type TrialClient, trialClients } from './trial-clients.ts';

/** How a trial is made. */
export interface TrialAsk {
  readonly kills: number;
  /** The longest that the clients save before a kill, ms. */
  readonly workMs: number;
  /** Told after each kill. */
  readonly say: (line: string) => void;
  /** No kill begins after so long, ms. */
  readonly mostMs?: number;
}

/** What a trial came to. */
export interface TrialResult {
  readonly kills: number;
  /** Acknowledged saves of each thing, by its name. */
  readonly acknowledged: Readonly<Record<string, number>>;
  /** Saves that were in flight at a kill. */
  readonly unanswered: number;
  /** Everything that was acknowledged and is not there, or is half there, in words. */
  readonly losses: readonly string[];
  /** The server's exit code when it was told to stop in the end. */
  readonly exitCode: number | null;
}

/** The longest that the first kill waits for the slowest client, ms. */
const FIRST_MS = 60_000;

async function lossesAt(url: string, clients: readonly TrialClient[], from?: number): Promise<string[]> {
  const losses: string[] = [];
  for (const { ledger, newest, read } of clients)
    losses.push(...(await lossesOf(ledger, await newest(url), (revision) => read(url, revision), from)));
  return losses;
}

const inFlight = (clients: readonly TrialClient[]): number =>
  clients.reduce((sum, { ledger }) => sum + ledger.sent.size, 0);

/** Waits until each client was answered once, so that whatever is killed has been at work at least once. */
async function everyAnswered(clients: readonly TrialClient[], mostMs: number): Promise<void> {
  const started = performance.now();
  while (clients.some(({ ledger }) => ledger.told.size === 0) && performance.now() - started < mostMs)
    await pause(10);
}

/** Lets all clients save for a while, kills the server under them, and gives what they complained of. */
async function killAtWork(
  server: ServerProcess,
  clients: readonly TrialClient[],
  { workMs, isFirst }: { readonly workMs: number; readonly isFirst: boolean },
): Promise<readonly string[]> {
  const works = clients.map(({ work }) => work(server.url));
  const settled = Promise.allSettled(works);
  if (isFirst) await everyAnswered(clients, FIRST_MS);
  await pause(Math.random() * workMs);
  await server.kill();
  return (await settled).flatMap((one) => (one.status === 'rejected' ? [String(one.reason)] : []));
}

/**
 * Kills a server without warning under clients that save jobs, the library, photos and quotations, starts it again and
 * compares what is there with what it acknowledged; over and over on one store.
 */
export async function killTrial({ kills, workMs, say, mostMs = Infinity }: TrialAsk): Promise<TrialResult> {
  const bundled = await bundledServer();
  const clients = trialClients();
  const library = clients.find(({ ledger }) => ledger.name === 'library')?.ledger;
  if (library === undefined) throw new Error('the trial has no library');
  const losses: string[] = [];
  let [unanswered, done] = [0, 0];
  const started = performance.now();
  try {
    for (; done < kills && performance.now() - started < mostMs; done += 1) {
      const server = await bundled.start();
      losses.push(...(await lossesAt(server.url, clients)));
      losses.push(...(await killAtWork(server, clients, { workMs, isFirst: done === 0 })));
      unanswered += inFlight(clients);
      say(`kill ${done + 1}: ${inFlight(clients)} in flight, ${losses.length} lost`);
    }
    const server = await bundled.start();
    losses.push(...(await lossesAt(server.url, clients)));
    losses.push(...(await lossesAt(server.url, clients, 1)));
    losses.push(...(await fileFaults(bundled.databaseUrl, library)));
    server.child.kill('SIGTERM');
    return {
      kills: done,
      acknowledged: Object.fromEntries(clients.map(({ ledger }) => [ledger.name, ledger.told.size])),
      unanswered,
      losses,
      exitCode: await server.ended,
    };
  } finally {
    await bundled.clear();
  }
}
