import type { PriceTurn, TurnChange } from './price-turn.ts';

/** In each turn its first way, or its last: where there are several, any of them may be the dearest. */
function combinations(ways: readonly (readonly TurnChange[])[]): readonly (readonly TurnChange[])[] {
  const some = ways.filter((each) => each.length > 0);
  const first = some.flatMap((each) => each.slice(0, 1));
  const last = some.flatMap((each) => each.slice(-1));
  if (first.length === 0) return [];
  return some.some((each) => each.length > 1) ? [first, last] : [first];
}

/** Some answers at once, and what is open still once they are given. */
export interface TurnedTogether {
  readonly changes: readonly TurnChange[];
  readonly stillOpen: readonly PriceTurn[];
}

/**
 * The combinations that the ends of a price are looked for among: all that would make it dearer at once, and all that would
 * make it cheaper. None where nothing is open.
 */
export const turnedTogether = (turns: readonly PriceTurn[]): readonly TurnedTogether[] =>
  (['dearer', 'cheaper'] as const).flatMap((way) => {
    const stillOpen = turns.filter((turn) => turn[way].length === 0);
    return combinations(turns.map((turn) => turn[way])).map((changes) => ({ changes, stillOpen }));
  });
