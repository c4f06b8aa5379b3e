import type { CircuitCharge } from './circuit-charges.ts';
import type { SchemeColumn } from './scheme-column.ts';
import type { Choice, Column, SearchSpace } from './search-space.ts';
import { waysByFloor } from './ways-by-floor.ts';
import { comesBefore, isTouchedSo, type Touched, within } from './ways-of-touching.ts';

/** Gives complete choices of a space, cheapest first, each once. */
export type RankChoices = <C extends Column>(space: SearchSpace<C>) => Generator<Choice<C>, void>;

/** A choice with what its circuits charge once: it costs no less than `cost`. */
export interface ChargedChoice {
  readonly choice: Choice<SchemeColumn>;
  /** Columns and certain charges together. */
  readonly cost: number;
}

interface Ranking {
  readonly way: Touched;
  readonly choices: Generator<Choice<SchemeColumn>, void>;
  next: IteratorResult<Choice<SchemeColumn>, void>;
}

/**
 * Complete choices in the order of their cost with the circuits' charges. Charges belong to circuits, not to columns,
 * so the space is ranked once for every way in which its circuits can be touched, and the rankings are merged. This is
 * exact: in the space of one such way, the columns of untouched circuits are left out, and of plainly touched ones
 * those with a point that asks for the remedy; every choice of that space costs its columns and no more than the
 * charges of that way, and a choice is taken from the one way that is truly its own, so none comes twice, and none
 * comes after a dearer one. A way is not ranked before the least that its own choices can cost comes to no more than
 * the choice that is next: of many circuits few are ever touched.
 */
export function* chargedChoices(
  space: SearchSpace<SchemeColumn>,
  charges: readonly CircuitCharge[],
  rank: RankChoices,
): Generator<ChargedChoice> {
  let rankings: readonly Ranking[] = [];
  const ways = waysByFloor(space, charges);
  for (;;) {
    let best = cheapest(rankings);
    while (ways.floor < Number.POSITIVE_INFINITY && ways.floor <= costOf(best)) {
      const way = ways.next();
      if (way === null) continue;
      const ranking = ranked(rank(within(space, charges, way.states)), way);
      // Of two that cost alike the one of the earlier way comes first, whichever was ranked first.
      const place = rankings.findIndex((other) => comesBefore(way, other.way));
      rankings = rankings.toSpliced(place < 0 ? rankings.length : place, 0, ranking);
      best = cheapest(rankings);
    }
    if (best === null || best.next.done) return;
    const choice = best.next.value;
    const cost = costOf(best);
    best.next = best.choices.next();
    if (isTouchedSo(choice.columns, charges, best.way.states)) yield { choice, cost };
  }
}

function ranked(choices: Ranking['choices'], way: Touched): Ranking {
  return { way, choices, next: choices.next() };
}

/** The ranking whose next choice costs least, of several the first; null where none has any. */
function cheapest(rankings: readonly Ranking[]): Ranking | null {
  return rankings.reduce<Ranking | null>(
    (best, one) => (!one.next.done && costOf(one) < costOf(best) ? one : best),
    null,
  );
}

function costOf(ranking: Ranking | null): number {
  return ranking === null || ranking.next.done
    ? Number.POSITIVE_INFINITY
    : ranking.way.charge + ranking.next.value.cost;
}
