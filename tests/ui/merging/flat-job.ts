import type { Job } from '#model/job.ts';

const isPlain = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Lists in which a word is there or is not, in no order that matters. */
const setsOfWords = /\/(absentServices|features|locks|multipliers|otherSources|photos)$/;

const isWords = (value: unknown): value is readonly string[] =>
  Array.isArray(value) && value.every((one) => typeof one === 'string');

/**
 * A job as one line for each field of each thing: written anew for the tests, so that nothing of the merge is in it. Lists
 * of things with ids have one line a field of each thing and none for their order, sets of words one line a word; every
 * other list is one line.
 */
export function flatJob(value: unknown, path = ''): ReadonlyMap<string, string> {
  if (setsOfWords.test(path) && isWords(value))
    return new Map(value.map((word) => [`${path}/${word}`, 'there'] as const));
  const isThings = Array.isArray(value) && value.every((one) => isPlain(one) && typeof one.id === 'string');
  const parts: readonly (readonly [string, unknown])[] | null = isThings
    ? (value as readonly { readonly id: string }[]).map((one) => [one.id, one] as const)
    : isPlain(value)
      ? Object.entries(value).filter(([, one]) => one !== undefined)
      : null;
  if (parts === null || parts.length === 0)
    return parts !== null || value === undefined
      ? new Map()
      : new Map([[path, JSON.stringify(sorted(value))]]);
  return new Map(parts.flatMap(([name, one]) => [...flatJob(one, `${path}/${name}`)]));
}

/** A value with the keys of its groups in one order. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (!isPlain(value)) return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, one]) => [name, sorted(one)]),
  );
}

/** The lines in which two jobs differ. */
export function linesBetween(before: Job, after: Job): ReadonlySet<string> {
  const [a, b] = [flatJob(before), flatJob(after)];
  return new Set([...new Set([...a.keys(), ...b.keys()])].filter((line) => a.get(line) !== b.get(line)));
}
