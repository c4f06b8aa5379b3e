import { isSameData } from '../../plan/same-data.ts';
import type { SchemeState } from './priced-state.ts';

/**
 * What a part of a difference comes of. `engine`: this version works out otherwise what was quoted by an earlier one;
 * `rest`: what none of the others is, such as the order of things in a file.
 */
export type MoveCause =
  | 'engine'
  | 'price'
  | 'rate'
  | 'norm'
  | 'sum'
  | 'firm-terms'
  | 'terms'
  | 'survey'
  | 'point'
  | 'connection'
  | 'remedy'
  | 'extra'
  | 'rest';

/** One change of many, made on a state in which all changes before it were made. */
export interface MoveStep {
  readonly cause: MoveCause;
  /** What changed: "Price of flat twin and earth cable 2.5/1.5 mm²", "W3 moved". */
  readonly words: string;
  /** From what to what, where a line has room for it; else empty. */
  readonly detail: string;
  /** Ids of the things of the job that changed, as its file has them. */
  readonly subjects: readonly string[];
  readonly apply: (state: SchemeState) => SchemeState;
}

/** Things of a list that are known by a key. */
export interface ListDifference<T> {
  readonly added: readonly T[];
  readonly changed: readonly { readonly before: T; readonly after: T }[];
  readonly removed: readonly T[];
}

/** What differs between two lists whose things are known by a key; each in the order of its own list. */
export function listDifference<T>(
  before: readonly T[],
  after: readonly T[],
  keyOf: (thing: T) => string,
): ListDifference<T> {
  const was = new Map(before.map((thing) => [keyOf(thing), thing]));
  const is = new Set(after.map(keyOf));
  return {
    added: after.filter((thing) => !was.has(keyOf(thing))),
    changed: after.flatMap((thing) => {
      const old = was.get(keyOf(thing));
      return old === undefined || isSameData(old, thing) ? [] : [{ before: old, after: thing }];
    }),
    removed: before.filter((thing) => !is.has(keyOf(thing))),
  };
}

/** A list with a thing in the place of the one of its key, or at its end. */
export function withThing<T>(list: readonly T[], thing: T, keyOf: (thing: T) => string): T[] {
  const key = keyOf(thing);
  return list.some((one) => keyOf(one) === key)
    ? list.map((one) => (keyOf(one) === key ? thing : one))
    : [...list, thing];
}

/** A list without the thing of a key. */
export const withoutThing = <T>(list: readonly T[], key: string, keyOf: (thing: T) => string): T[] =>
  list.filter((one) => keyOf(one) !== key);

/** Things of a job are known by their ids. */
export const idOf = ({ id }: { readonly id: string }): string => id;

/** "£2.10, was £1.80"; what was not there before is not told. */
export const fromTo = (before: string, after: string): string =>
  before === after ? '' : `${after}, was ${before}`;
