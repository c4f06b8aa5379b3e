import { createHash } from 'node:crypto';

/** A short word for some bytes or text that no other has. */
export const fingerprint = (content: string | Uint8Array): string =>
  createHash('sha256').update(content).digest('hex');

/**
 * What the clients of a trial were told of one thing that has numbered states: a job, the library, a quotation's history. Texts
 * are kept as fingerprints, so that a trial of hundreds of kills keeps little.
 */
export interface Ledger {
  /** What it is called in a loss that is reported. */
  readonly name: string;
  /** The states that the server said it has, by revision. */
  readonly told: Map<number, string>;
  /** What was sent and not answered: each may be there whole, or not at all. */
  readonly sent: Set<string>;
  /** True: the states before the newest may have been let go of. */
  readonly lets: boolean;
  /** All up to here were looked at. */
  checkedTo: number;
}

export const newLedger = (name: string, lets = false): Ledger => ({
  name,
  told: new Map(),
  sent: new Set(),
  lets,
  checkedTo: 0,
});

/** Reads one state of a thing, as a fingerprint; null: it is not there. */
export type ReadState = (revision: number) => Promise<string | null>;

const newestTold = ({ told }: Ledger): number => Math.max(0, ...told.keys());

function lossAt({ name, told, sent }: Ledger, revision: number, there: string | null): string | null {
  const acknowledged = told.get(revision);
  if (there === null) return acknowledged === undefined ? null : `${name}: revision ${revision} is gone`;
  if (acknowledged !== undefined)
    return there === acknowledged ? null : `${name}: revision ${revision} is another text`;
  return sent.has(there) ? null : `${name}: revision ${revision} was sent by nobody`;
}

/**
 * Compares what is there with what was told, from the revision that was last looked at.
 *
 * @param from 1: all of it again.
 * @returns every loss, in words; what had not been answered and is there counts as told from now on.
 */
export async function lossesOf(
  ledger: Ledger,
  newest: number,
  read: ReadState,
  from = ledger.checkedTo + 1,
): Promise<readonly string[]> {
  const losses: string[] = [];
  if (newest < newestTold(ledger))
    losses.push(`${ledger.name}: ${newest} is the newest, ${newestTold(ledger)} was acknowledged`);
  for (let revision = ledger.lets ? Math.max(1, newest) : from; revision <= newest; revision += 1) {
    const there = await read(revision);
    const loss = lossAt(ledger, revision, there);
    if (loss !== null) losses.push(loss);
    else if (there === null && !ledger.lets) losses.push(`${ledger.name}: a gap at revision ${revision}`);
    else if (there !== null) ledger.told.set(revision, there);
  }
  ledger.sent.clear();
  ledger.checkedTo = newest;
  return losses;
}
