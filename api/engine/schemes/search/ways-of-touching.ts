import type { CircuitCharge } from './circuit-charges.ts';
import { idHeap } from './id-heap.ts';
import type { SchemeColumn } from './scheme-column.ts';
import { filtered, type SearchSpace } from './search-space.ts';

/** How a circuit is touched: not at all, only for points that ask for no remedy, or with its remedy. */
export type State = 'untouched' | 'plain' | 'remedied';

/** One way in which the circuits can be touched, and what they charge then. */
export interface Touched {
  readonly states: readonly State[];
  readonly charge: number;
  /** The way that it goes on from with one circuit more; null where none is touched. */
  readonly before: Touched | null;
  /** Among those that go on from the same way. */
  readonly place: number;
}

/** Whether some points ask for a remedy of it. */
export const isNeedy = ({ remedies, needing }: CircuitCharge): boolean => remedies > 0 && needing !== 0;

/** How a circuit may be touched where it is touched at all. */
const touchingStates = (charge: CircuitCharge): readonly Exclude<State, 'untouched'>[] =>
  isNeedy(charge) ? ['plain', 'remedied'] : ['plain'];

const chargeIn = ({ touched, remedies }: CircuitCharge, state: State): number => {
  if (state === 'untouched') return 0;
  return state === 'plain' ? touched : touched + remedies;
};

/** Whether a column that touches a circuit may be taken where it is touched like that. */
export const mayTake = (charge: CircuitCharge, state: State, mask: number): boolean =>
  state === 'remedied' || (state === 'plain' && !(isNeedy(charge) && (mask & charge.needing) !== 0));

type Space = SearchSpace<SchemeColumn>;

/** A way that touches the circuits up to `last`, that one truly, and none after it. */
export interface Partly extends Touched {
  readonly last: number;
  readonly touched: number;
}

export const nothingTouched = (charges: readonly CircuitCharge[]): Partly => ({
  states: charges.map(() => 'untouched'),
  ...{ charge: 0, before: null, last: -1, touched: 0, place: 0 },
});

/** The ways that go on from one with a circuit more. */
export function touchingOneMore(way: Partly, charges: readonly CircuitCharge[]): readonly Partly[] {
  return charges
    .flatMap((charge, i) =>
      i > way.last ? touchingStates(charge).map((state) => ({ charge, i, state })) : [],
    )
    .map(({ charge, i, state }, place) => ({
      states: way.states.with(i, state),
      charge: way.charge + chargeIn(charge, state),
      ...{ before: way, last: i, touched: way.touched + 1, place },
    }));
}

/** The order of ways: those that charge least first, of two that charge alike the one that goes on from the earlier way. */
export function comesBefore(a: Touched, b: Touched): boolean {
  if (a.charge !== b.charge) return a.charge < b.charge;
  if (a.before === null || b.before === null) return b.before !== null;
  return a.before === b.before ? a.place < b.place : comesBefore(a.before, b.before);
}

/** Ways, the first of them by an order of the caller's at a time. */
export function wayQueue<W>(before: (a: W, b: W) => boolean) {
  const known: W[] = [];
  const waiting = idHeap([], (a, b) => before(known[a] as W, known[b] as W));
  return {
    push(way: W): void {
      waiting.push(known.push(way) - 1);
    },
    pop(): W | null {
      const id = waiting.pop();
      const way = known[id] ?? null;
      delete known[id];
      return way;
    },
  };
}

/**
 * Every way in which circuits can be touched, by as many of them as there are points at most; those that charge least
 * first, one after another as they are asked for.
 */
export function* waysByCharge(charges: readonly CircuitCharge[], points: number): Generator<Touched, void> {
  const queue = wayQueue<Partly>(comesBefore);
  queue.push(nothingTouched(charges));
  for (let way = queue.pop(); way !== null; way = queue.pop()) {
    yield way;
    if (way.touched < points) for (const more of touchingOneMore(way, charges)) queue.push(more);
  }
}

/** The space without what a way of touching circuits leaves out. */
export function within(space: Space, charges: readonly CircuitCharge[], states: readonly State[]): Space {
  const placeOf = new Map(charges.map(({ circuitId }, i) => [circuitId, i]));
  return filtered(space, ({ circuitIds, mask }) =>
    circuitIds.every((id) => {
      const i = placeOf.get(id) ?? -1;
      const charge = charges[i];
      return charge !== undefined && mayTake(charge, states[i] ?? 'untouched', mask);
    }),
  );
}

/** Whether columns touch every circuit just as the states say. */
export function isTouchedSo(
  columns: readonly SchemeColumn[],
  charges: readonly CircuitCharge[],
  states: readonly State[],
): boolean {
  return charges.every((charge, i) => {
    const mask = columns.reduce(
      (sum, column) => (column.circuitIds.includes(charge.circuitId) ? sum | column.mask : sum),
      0,
    );
    if (mask === 0) return states[i] === 'untouched';
    const isRemedied = isNeedy(charge) && (mask & charge.needing) !== 0;
    return states[i] === (isRemedied ? 'remedied' : 'plain');
  });
}
