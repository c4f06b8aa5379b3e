import { isSameData } from '#engine/plan/same-data.ts';
import type { Copies } from '../device/copies.ts';
import type { CopyHead, KeptCopy } from '../device/kept-copy.ts';
import { type Revised, ServerRefusal } from './api-client.ts';
import type { SessionStart } from './keeper.ts';
import { patiently, type Wait } from './wait.ts';

/** What a document is opened from. */
export interface OpeningParts<T> {
  readonly name: string;
  /** Null where nothing is kept on the device. */
  readonly copies: Copies | null;
  readonly read: () => Promise<Revised<T>>;
  /** Reads a state that the device kept, perhaps of another version; null where this one cannot. */
  readonly readKept: (value: unknown) => T | null;
  /** The tag of what is open already, with nothing unsent; null where it is not open. */
  readonly held: string | null;
  readonly wait: Wait;
}

/** What a session is begun with, and the device's copy that it goes on with. */
export interface Opened<T> {
  readonly start: SessionStart<T>;
  /** Of the copy; none where it begins another. */
  readonly key?: string;
}

/** Whether there was no answer, or one that may be another in a minute. */
export const isAway = (error: unknown): error is ServerRefusal =>
  error instanceof ServerRefusal && (error.status === 0 || error.status >= 500);

/** What a server that does not answer counts as. */
export const noAnswer = (): ServerRefusal => new ServerRefusal(0, {});

const isGone = (error: unknown): boolean => error instanceof ServerRefusal && error.code === 'no-such-job';

/** What the server has; with a copy at hand it is not waited for longer than a person would. */
async function serverState<T>(
  { read, wait }: OpeningParts<T>,
  hasOther: boolean,
): Promise<Revised<T> | ServerRefusal> {
  const answer = read().catch((error: unknown) => {
    if (error instanceof ServerRefusal) return error;
    throw error;
  });
  return hasOther ? patiently<Revised<T> | ServerRefusal>(answer, wait, noAnswer) : answer;
}

/** What a copy goes on as; null where this version cannot read it. Its steps go where its states had to be brought up to date. */
function startOf<T>({ head, held }: KeptCopy, readKept: OpeningParts<T>['readKept']): SessionStart<T> | null {
  const [now, base] = [readKept(held.now), readKept(held.base)];
  if (now === null || base === null) return null;
  const { revision, etag } = held;
  const isAsWritten = isSameData(now, held.now);
  const { done, undone } = isAsWritten ? held : { done: [], undone: [] };
  const sent = held.sent.map(readKept).filter((one) => one !== null);
  // Where nothing is unsent the two are one, and a session tells them apart by being two.
  return { value: head.unsent ? base : now, revision, etag, goneOn: { now, sent, done, undone } };
}

/** Goes on with a copy; null where it cannot be, and then it stays as it is. */
async function goOn<T>(copies: Copies, head: CopyHead, parts: OpeningParts<T>): Promise<Opened<T> | null> {
  const copy = await copies.read(head.key);
  const start = copy === null ? null : startOf(copy, parts.readKept);
  if (start === null || (await copies.claim(head)) === null) return null;
  return { start, key: head.key };
}

/** Begins a copy of one that another tab is working on. */
async function besideOpen<T>({ copies, name, readKept }: OpeningParts<T>): Promise<Opened<T> | null> {
  const copy = (await copies?.besideOpen(name)) ?? null;
  const start = copy === null ? null : startOf(copy, readKept);
  return start === null ? null : { start };
}

/**
 * Opens a document: what the device has unsent of it first, else what the server has, with the steps of the device where
 * they lead to just that; without an answer what the device has.
 *
 * @returns null where what is open already is still what there is. Throws the server's refusal where neither has it; a
 * copy that nothing is unsent of is gone from the device then, if the server has taken it off the list.
 */
export async function openDocument<T>(parts: OpeningParts<T>): Promise<Opened<T> | null> {
  const { copies, name, held } = parts;
  const free = (await copies?.free(name)) ?? [];
  const server = await serverState(parts, held !== null || free.length > 0);
  const refused = server instanceof ServerRefusal ? server : null;
  // What a newer version has saved is not to be touched, not even by what was changed here before.
  if (refused !== null && !isAway(refused) && !isGone(refused)) throw refused;
  const etag = server instanceof ServerRefusal ? null : server.etag;
  if (copies !== null) {
    const wanted = free.filter((head) => head.unsent || isAway(refused) || head.etag === etag);
    const isHeld = held !== null && (isAway(refused) || held === etag);
    for (const head of wanted) {
      if (isHeld && !head.unsent) continue;
      const opened = await goOn(copies, head, parts);
      if (opened === null) continue;
      await dropStale(
        copies,
        free.filter((one) => one !== head),
      );
      return opened;
    }
    if (!isAway(refused)) await dropStale(copies, free);
  }
  if (held !== null && (isAway(refused) || held === etag)) return null;
  if (!(server instanceof ServerRefusal)) return { start: server };
  const beside = isAway(server) ? await besideOpen(parts) : null;
  if (beside !== null) return beside;
  throw server;
}

/** What need not be kept goes from the device; what is unsent stays. */
async function dropStale(copies: Copies, heads: readonly CopyHead[]): Promise<void> {
  for (const head of heads) if (!head.unsent) await copies.drop(head);
}
