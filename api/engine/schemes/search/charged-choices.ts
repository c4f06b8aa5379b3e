import { leastCost } from './cheapest-choices.ts';
import type { CircuitCharge } from './circuit-charges.ts';
import { idHeap } from './id-heap.ts';
import type { SchemeColumn } from './scheme-column.ts';
import type { Choice, Column, SearchSpace } from './search-space.ts';

/** Gives complete choices of a space, cheapest first, each once. */
export type RankChoices = <C extends Column>(space: SearchSpace<C>) => Generator<Choice<C>, void>;

/** A choice with what its circuits charge once: it costs no less than `cost`. */
export interface ChargedChoice {
  readonly choice: Choice<SchemeColumn>;
  /** Columns and certain charges together. */
  readonly cost: number;
}

/** How a circuit is touched: not at all, only for points that ask for no remedy, or with its remedy. */
type State = 'untouched' | 'plain' | 'remedied';

const statesOf = ({ remedies, needing }: CircuitCharge): readonly State[] =>
  remedies > 0 && needing !== 0 ? ['untouched', 'plain', 'remedied'] : ['untouched', 'plain'];

/** One way in which the circuits can be touched, and what they charge then. */
export interface Touched {
  readonly states: readonly State[];
  readonly charge: number;
}

interface Ranking extends Touched {
  readonly choices: Generator<Choice<SchemeColumn>, void>;
  next: IteratorResult<Choice<SchemeColumn>, void>;
}

/**
 * Complete choices in the order of their cost with the circuits' charges. Charges belong to circuits, not to columns,
 * so the space is ranked once for every way in which its circuits can be touched, and the rankings are merged. This is
 * exact: in the space of one such way, the columns of untouched circuits are left out, and of plainly touched ones
 * those with a point that asks for the remedy; every choice of that space costs its columns and no more than the
 * charges of that way, and a choice is taken from the one way that is truly its own, so none comes twice, and none
 * comes after a dearer one. A way is not ranked before its charges, with the least that any columns cost, come to no
 * more than the choice that is next: of many circuits few are ever touched.
 */
export function* chargedChoices(
  space: SearchSpace<SchemeColumn>,
  charges: readonly CircuitCharge[],
  rank: RankChoices,
): Generator<ChargedChoice> {
  const floor = leastCost(space);
  if (floor === null) return;
  const rankings: Ranking[] = [];
  const ways = waysByCharge(charges, space.points);
  let way = ways.next();
  for (;;) {
    let best = cheapest(rankings);
    while (!way.done && way.value.charge + floor <= costOf(best)) {
      rankings.push(ranked(rank(within(space, charges, way.value.states)), way.value));
      way = ways.next();
      best = cheapest(rankings);
    }
    if (best === null || best.next.done) return;
    const choice = best.next.value;
    const cost = costOf(best);
    best.next = best.choices.next();
    if (isOwn(choice, charges, best.states)) yield { choice, cost };
  }
}

function ranked(choices: Ranking['choices'], { states, charge }: Touched): Ranking {
  return { states, charge, choices, next: choices.next() };
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
    : ranking.charge + ranking.next.value.cost;
}

/** A way that touches the circuits up to `last`, that one truly, and none after it. */
interface Partly extends Touched {
  readonly last: number;
  readonly touched: number;
}

/**
 * Every way in which circuits can be touched, by as many of them as there are points at most; those that charge least
 * first, one after another as they are asked for.
 */
export function* waysByCharge(charges: readonly CircuitCharge[], points: number): Generator<Touched, void> {
  const none: Partly = { states: charges.map(() => 'untouched'), charge: 0, last: -1, touched: 0 };
  const known: Partly[] = [none];
  const costAt = (id: number): number => known[id]?.charge ?? 0;
  const waiting = idHeap([0], (a, b) => costAt(a) < costAt(b) || (costAt(a) === costAt(b) && a < b));
  for (let id = waiting.pop(); id >= 0; id = waiting.pop()) {
    const way = known[id] ?? none;
    yield way;
    if (way.touched < points)
      for (const more of touchingOneMore(way, charges)) waiting.push(known.push(more) - 1);
  }
}

function touchingOneMore(way: Partly, charges: readonly CircuitCharge[]): readonly Partly[] {
  return charges.flatMap((charge, i) =>
    i <= way.last
      ? []
      : statesOf(charge).flatMap((state) =>
          state === 'untouched'
            ? []
            : [
                {
                  states: way.states.with(i, state),
                  charge: way.charge + chargeIn(charge, state),
                  last: i,
                  touched: way.touched + 1,
                },
              ],
        ),
  );
}

function chargeIn({ touched, remedies }: CircuitCharge, state: State): number {
  if (state === 'untouched') return 0;
  return state === 'plain' ? touched : touched + remedies;
}

/** The space without what a way of touching circuits leaves out. */
export function within(
  space: SearchSpace<SchemeColumn>,
  charges: readonly CircuitCharge[],
  states: readonly State[],
): SearchSpace<SchemeColumn> {
  const stateOf = new Map(charges.map((charge, i) => [charge.circuitId, { charge, state: states[i] }]));
  const isIn = ({ circuitIds, mask }: SchemeColumn): boolean =>
    circuitIds.every((id) => {
      const known = stateOf.get(id);
      if (known?.state === 'plain')
        return statesOf(known.charge).length === 2 || !(mask & known.charge.needing);
      return known?.state === 'remedied';
    });
  return {
    points: space.points,
    layers: space.layers
      .map(({ id, columns }) => ({ id, columns: columns.filter(isIn) }))
      .filter(({ columns }) => columns.length > 0),
    free: space.free.filter(isIn),
  };
}

/** Whether a choice touches every circuit just as the states say. */
function isOwn(
  { columns }: Choice<SchemeColumn>,
  charges: readonly CircuitCharge[],
  states: readonly State[],
): boolean {
  return charges.every((charge, i) => {
    const mask = columns.reduce(
      (sum, column) => (column.circuitIds.includes(charge.circuitId) ? sum | column.mask : sum),
      0,
    );
    if (mask === 0) return states[i] === 'untouched';
    const isRemedied = statesOf(charge).length > 2 && (mask & charge.needing) !== 0;
    return states[i] === (isRemedied ? 'remedied' : 'plain');
  });
}
