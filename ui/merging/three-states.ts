/** A value as it is in the three states that are merged; undefined: it is not there. */
export interface ThreeStates {
  /** What both began with. */
  readonly base: unknown;
  readonly mine: unknown;
  readonly theirs: unknown;
}

/** One of the two that changed what both began with. */
export type Side = 'mine' | 'theirs';

/** The smallest thing that is taken from one side whole: a field, or a thing that only one of the two has. */
export interface Atom extends ThreeStates {
  /** Fields, and what things of lists are known by, from the top. */
  readonly path: readonly string[];
  /** The path as one word. */
  readonly key: string;
}

/** A path as one word, by which decisions name what they are about. */
export const keyOfPath = (path: readonly string[]): string => JSON.stringify(path);

/** The last step of a path that tells in which order a list is, not what is in it. */
export const ORDER = '(order)';
/** The last step of a path that tells whether a group or a list is there, not what is in it. */
export const THERE = '(there)';
