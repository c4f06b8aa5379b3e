import { isSameData } from '#engine/plan/same-data.ts';
import { isGroup, keyOf } from './list-keys.ts';

/** Where two states of a document differ: the way to it, and what either has there; undefined: nothing. */
export interface DataDifference {
  readonly path: readonly string[];
  readonly mine: unknown;
  readonly theirs: unknown;
  /** What both began with. */
  readonly base: unknown;
}

type Group = Readonly<Record<string, unknown>>;

/** The things of a list by what they are known by; null where it is a list of something else. */
function byKey(list: unknown): Group | null {
  if (!Array.isArray(list)) return null;
  const keys = list.map(keyOf);
  if (keys.includes(null) || new Set(keys).size < keys.length) return null;
  return Object.fromEntries(list.map((thing, index) => [keys[index] ?? '', thing]));
}

/** A value as something to go into: a group, or a list of things by key; null where it is taken whole. */
function inside(value: unknown): Group | null {
  return isGroup(value) ? value : byKey(value);
}

/** As `inside`; nothing beside a group of fields is a group without any. */
const insideOr = (value: unknown, other: unknown): Group | null =>
  value === undefined && isGroup(other) && keyOf(other) === null ? {} : inside(value);

/**
 * Where two states of a document differ, as small as it can be said. Things of a list are matched by what they are
 * known by; what only one has is one difference; so is another order of the same things.
 *
 * @param isWhole whether what is at a path is compared as one value, such as a place.
 */
export function dataDifferences(
  states: Omit<DataDifference, 'path'>,
  isWhole: (path: readonly string[]) => boolean,
  path: readonly string[] = [],
): readonly DataDifference[] {
  const { mine, theirs, base } = states;
  if (isSameData(mine, theirs)) return [];
  const [here, there] = isWhole(path) ? [null, null] : [insideOr(mine, theirs), insideOr(theirs, mine)];
  if (here === null || there === null) return [{ path, mine, theirs, base }];
  const was = inside(base) ?? {};
  const keys = [...new Set([...Object.keys(here), ...Object.keys(there)])];
  const found = keys.flatMap((key) =>
    dataDifferences({ mine: here[key], theirs: there[key], base: was[key] }, isWhole, [...path, key]),
  );
  // The same things in another order: nothing smaller to be named.
  return found.length > 0 ? found : [{ path, mine, theirs, base }];
}
