import { createReadStream } from 'node:fs';
import { Refused } from '../product/job-file.ts';
import type { BatchLine } from './batch-line.ts';

/** A whole line of an earlier run. */
export interface KeptLine {
  readonly line: BatchLine;
  /** Where in the file it begins, bytes. */
  readonly fromByte: number;
  readonly toByte: number;
}

const NEWLINE = 0x0a;
/** What every line begins with. */
const HEAD = '{"at":';

const notOurs = (path: string): Refused =>
  new Refused(`${path}: the file is there, and is not the result of a batch. Name another with --out.`);

async function* wholeLines(path: string): AsyncGenerator<Omit<KeptLine, 'line'> & { text: string }> {
  let rest = Buffer.alloc(0);
  let fromByte = 0;
  for await (const chunk of createReadStream(path) as AsyncIterable<Buffer>) {
    rest = Buffer.concat([rest, chunk]);
    let begun = 0;
    for (let end = rest.indexOf(NEWLINE); end >= 0; end = rest.indexOf(NEWLINE, begun)) {
      const toByte = fromByte + end + 1 - begun;
      yield { text: rest.toString('utf8', begun, end), fromByte, toByte };
      fromByte = toByte;
      begun = end + 1;
    }
    rest = rest.subarray(begun);
  }
  const half = rest.toString('utf8', 0, HEAD.length);
  if (!HEAD.startsWith(half)) throw notOurs(path);
}

function lineFrom(text: string): BatchLine | null {
  try {
    const line = JSON.parse(text) as Partial<BatchLine> | null;
    return typeof line?.by === 'string' && line.at !== undefined && line.date !== undefined
      ? (line as BatchLine)
      : null;
  } catch {
    return null;
  }
}

/**
 * The whole lines of an earlier run, in order; what stands after the last line break is none. None of a file that is not there.
 *
 * @throws Refused where a line is no line of a batch: the file is something else's.
 */
export async function* keptLines(path: string): AsyncGenerator<KeptLine> {
  try {
    for await (const { text, ...at } of wholeLines(path)) {
      const line = lineFrom(text);
      if (line === null) throw notOurs(path);
      yield { line, ...at };
    }
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return;
    throw error;
  }
}
