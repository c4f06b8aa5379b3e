import type { Library } from '#model/library.ts';
import type { SchemeEstimate } from '../schemes/estimate-result.ts';
import { feltInRooms } from './felt.ts';
import { howSaid, remediesSaid } from './how-said.ts';
import { includedOf } from './scope.ts';
import { askedFor } from './thing-said.ts';

/** What of agreed work is done otherwise, in the customer's words: sentences of before that are no longer so, and those in their place. */
export interface WorkMoved {
  readonly before: readonly string[];
  readonly now: readonly string[];
}

/**
 * All that a scheme does, a sentence each, as its quotation says it: what is put in and where, how it is fed, what is changed beside
 * it, what is felt of it room by room, what is in the price.
 */
export function workSaid(scheme: SchemeEstimate, { terms }: Pick<Library, 'terms'>): readonly string[] {
  const felt = feltInRooms(scheme.worked).flatMap(({ room, words }) => words.map((one) => `${room}: ${one}`));
  return [
    ...askedFor(scheme.worked, terms),
    ...howSaid(scheme),
    ...remediesSaid(scheme),
    ...felt,
    ...includedOf([{ letter: 'A', scheme }]).map(({ words }) => words),
  ];
}

/** What is said of one and not of the other, each in its own order; both empty where nothing is done otherwise. */
export function workBetween(before: readonly string[], now: readonly string[]): WorkMoved {
  const without = (list: readonly string[], other: readonly string[]): readonly string[] => {
    const said = new Set(other);
    return [...new Set(list)].filter((one) => !said.has(one));
  };
  return { before: without(before, now), now: without(now, before) };
}
