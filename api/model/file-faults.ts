import type { z } from 'zod';
import type { Fault, Flaw } from './fault.ts';
import { faultWords } from './fault-words.ts';
import { pathWords, subjectWords } from './path-words.ts';
import { referenceFlaws } from './references.ts';
import { schemaFlaws } from './schema-flaws.ts';
import { type FilePath, valueAt } from './schema-walk.ts';

/** Everything wrong with a file by its schema: shapes, values, ids and references, in the file's own order. */
export function fileFaults(schema: z.ZodType, file: unknown): Fault[] {
  const flaws = [...schemaFlaws(schema, file), ...referenceFlaws(schema, file)];
  return flaws
    .map((flaw) => ({ flaw, position: positionIn(file, flaw.path) }))
    .sort((a, b) => comparePositions(a.position, b.position))
    .map(({ flaw }) => flawInWords(flaw, subjectWords(schema, file, flaw.path)));
}

/** One flaw as a fault; `subject` is the thing it lies in, which leads the message. */
export function flawInWords(flaw: Flaw, subject?: string): Fault {
  const { message, remedy } = faultWords(flaw);
  const about = subject === undefined ? '' : `${subject.charAt(0).toUpperCase()}${subject.slice(1)}: `;
  return { path: pathWords(flaw.path), code: flaw.code, message: `${about}${message}`, remedy };
}

/** Where a place stands among its neighbours, level by level; what is missing stands last. */
function positionIn(file: unknown, path: FilePath): number[] {
  return path.map((key, depth) => {
    if (typeof key === 'number') return key;
    const owner = valueAt(file, path.slice(0, depth));
    const index = typeof owner === 'object' && owner !== null ? Object.keys(owner).indexOf(key) : -1;
    return index < 0 ? Number.MAX_SAFE_INTEGER : index;
  });
}

function comparePositions(a: readonly number[], b: readonly number[]): number {
  for (let depth = 0; depth < Math.min(a.length, b.length); depth += 1) {
    const difference = (a[depth] ?? 0) - (b[depth] ?? 0);
    if (difference !== 0) return difference;
  }
  return a.length - b.length;
}
