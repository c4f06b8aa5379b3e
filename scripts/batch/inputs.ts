import { createReadStream } from 'node:fs';
import { readdir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';
import { Refused } from '../product/job-file.ts';
import type { BatchInput } from './batch-line.ts';

/** The jobs of a batch, one at a time as they are asked for. */
export interface BatchInputs {
  readonly jobs: AsyncIterable<BatchInput>;
  /** Null: a stream tells no number. */
  readonly count: number | null;
}

async function* filesOf(folder: string, names: readonly string[]): AsyncGenerator<BatchInput> {
  for (const at of names) yield { at, text: await readFile(join(folder, at), 'utf8').catch(() => null) };
}

/** Lines of a stream, counted from 1; empty ones are no jobs. Read no faster than they are taken. */
export async function* linesOf(stream: Readable): AsyncGenerator<BatchInput> {
  let at = 0;
  for await (const text of createInterface({ input: stream, crlfDelay: Number.POSITIVE_INFINITY })) {
    at += 1;
    if (text.trim() !== '') yield { at, text };
  }
}

/** The jobs of a folder, of a file with one a line, or of standard input; refuses what is not there. */
export async function batchInputs(from: string): Promise<BatchInputs> {
  if (from === '-') return { jobs: linesOf(process.stdin), count: null };
  const there = await stat(from).catch(() => null);
  if (there === null) throw new Refused(`${from}: there is no such folder or file. Check the path.`);
  if (!there.isDirectory()) return { jobs: linesOf(createReadStream(from)), count: null };
  const entries = await readdir(from, { withFileTypes: true });
  const names = entries.flatMap((entry) =>
    entry.name.endsWith('.json') && !entry.isDirectory() ? [entry.name] : [],
  );
  if (names.length === 0) throw new Refused(`${from}: there is no job file (*.json) in this folder.`);
  return { jobs: filesOf(from, names.toSorted()), count: names.length };
}
