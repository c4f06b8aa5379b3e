import type { Fault } from './fault.ts';

/** What a file was opened as. */
export type FileKind = 'job' | 'library';

/** The parts without which a library is none. */
const libraryParts = ['firm', 'prices', 'norms'];

/**
 * True when a file's faults say that it is something else altogether, and not one with slips in it: no JSON, of
 * another format, or without what makes a job or a library one.
 */
export function isForeign(kind: FileKind, faults: readonly Pick<Fault, 'path' | 'code'>[]): boolean {
  if (faults.some(({ path, code }) => code === 'not-json' || code === 'wrong-format' || path === 'file'))
    return true;
  const missing = new Set(faults.filter(({ code }) => code === 'missing').map(({ path }) => path));
  return kind === 'job' ? missing.has('format') : libraryParts.every((part) => missing.has(part));
}
