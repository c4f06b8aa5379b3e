import { isGroup, keyOf } from '../differences/list-keys.ts';

/** Lists of words in which each word is there or not: of two that added to one both additions count. */
const sets: ReadonlySet<string> = new Set([
  'absentServices',
  'features',
  'locks',
  'multipliers',
  'otherSources',
  'photos',
]);

function keyIn(name: string, thing: unknown): string | null {
  if (sets.has(name)) return typeof thing === 'string' ? thing : null;
  // A remedy has no id: it is known by what is done to what.
  if (name === 'remedies') return isGroup(thing) ? `${thing.kind} ${thing.at ?? ''}` : null;
  return keyOf(thing);
}

/**
 * What the things of a list are known by, in the list's order.
 *
 * @param name the field that holds the list.
 * @returns null for what is no list, and for a list whose things cannot be told apart: it is one value then.
 */
export function keysOfList(name: string, list: unknown): readonly string[] | null {
  if (!Array.isArray(list)) return null;
  const keys = list.map((thing) => keyIn(name, thing));
  const known = keys.filter((key) => key !== null);
  return known.length === keys.length && new Set(known).size === known.length ? known : null;
}
