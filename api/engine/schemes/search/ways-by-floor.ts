import type { CircuitCharge } from './circuit-charges.ts';
import { leastCosts } from './least-costs.ts';
import type { SchemeColumn } from './scheme-column.ts';
import { filtered, type Layer, type SearchSpace } from './search-space.ts';
import {
  comesBefore,
  isNeedy,
  mayTake,
  nothingTouched,
  type Partly,
  type State,
  type Touched,
  touchingOneMore,
  wayQueue,
} from './ways-of-touching.ts';

/** The ways in which circuits can be touched, one after another by what their choices cost at least. */
export interface WaysByFloor {
  /** No way that is still to come has a choice of its own that costs less; Infinity where none is to come. */
  readonly floor: number;
  /** Looks a little further: gives a way, or null where that only raised the floor. */
  next(): Touched | null;
}

/** A way that is to be given itself, or to be gone on from. */
interface Waiting {
  readonly way: Partly;
  readonly floor: number;
  /** By set the least that its circuits connect just that for, each some of it. */
  readonly spent: () => Float64Array;
  readonly isGiven: boolean;
}

/**
 * The ways with the cheapest choices first; a way whose circuits cannot connect all points together is never given. The
 * floors are exact in a larger space, where what touches one circuit takes no layer from what touches another: each
 * circuit of a way connects some points for the least that its own columns do, and what is left goes to columns that
 * touch none, or, as long as further circuits may be touched, to any.
 */
export function waysByFloor(
  space: SearchSpace<SchemeColumn>,
  charges: readonly CircuitCharge[],
): WaysByFloor {
  const least = leastByCircuit(space, charges);
  const queue = wayQueue<Waiting>(
    (a, b) => a.floor < b.floor || (a.floor === b.floor && comesBefore(a.way, b.way)),
  );
  const push = (waiting: Waiting): void => {
    if (waiting.floor < Number.POSITIVE_INFINITY) queue.push(waiting);
  };
  const goOnFrom = ({ way, floor, spent }: Waiting): void => {
    const so = spent();
    push({ way, floor: Math.max(floor, way.charge + leastOfAll(so, least.none)), spent, isGiven: true });
    if (way.touched === space.points) return;
    for (const more of touchingOneMore(way, charges)) {
      const { own, ownAndAny } = least.of(more);
      const whole = more.charge + leastOfAll(so, ownAndAny());
      push({
        way: more,
        floor: Math.max(floor, whole),
        spent: once(() => together(so, own)),
        isGiven: false,
      });
    }
  };
  push({
    way: nothingTouched(charges),
    floor: least.any.at(-1) ?? 0,
    spent: () => nothingSpent(space.points),
    isGiven: false,
  });
  let first = queue.pop();
  return {
    get floor() {
      return first?.floor ?? Number.POSITIVE_INFINITY;
    },
    next() {
      const now = first;
      if (now === null) return null;
      if (!now.isGiven) goOnFrom(now);
      first = queue.pop();
      return now.isGiven ? now.way : null;
    },
  };
}

function nothingSpent(points: number): Float64Array {
  const spent = new Float64Array(2 ** points).fill(Number.POSITIVE_INFINITY);
  spent[0] = 0;
  return spent;
}

function once<R>(work: () => R): () => R {
  let known: R | undefined;
  return () => {
    known ??= work();
    return known;
  };
}

/** By set the least that connects just it: by what touches one circuit (never the empty set), and by that with any other. */
interface LeastOfCircuit {
  readonly own: Float64Array;
  readonly ownAndAny: () => Float64Array;
}

/** The same by what touches no circuit, by all there is, and by the circuit that a way touches last. */
interface LeastByCircuit {
  readonly none: Float64Array;
  readonly any: Float64Array;
  readonly of: (way: Partly) => LeastOfCircuit;
}

function leastByCircuit(space: SearchSpace<SchemeColumn>, charges: readonly CircuitCharge[]): LeastByCircuit {
  const groups = byCircuit(space, charges);
  const groupOf = (place: number) => groups.get(place) ?? { points: space.points, layers: [], free: [] };
  const none = leastBySet(groupOf(NO_CIRCUIT));
  const alls = charges.map((_, i) => leastBySet(groupOf(i)));
  const any = alls.reduce(together, none);
  const withAny = (least: Float64Array): LeastOfCircuit => {
    const own = least.with(0, Number.POSITIVE_INFINITY);
    return { own, ownAndAny: once(() => together(own, any)) };
  };
  const ofCircuits = charges.map((charge, i): Readonly<Record<State, LeastOfCircuit>> => {
    const all = withAny(alls[i] ?? none);
    const isPlain = ({ mask }: SchemeColumn): boolean => mayTake(charge, 'plain', mask);
    const plain = isNeedy(charge) ? withAny(leastBySet(filtered(groupOf(i), isPlain))) : all;
    return { untouched: all, plain, remedied: all };
  });
  const nothing = withAny(none);
  return {
    none,
    any,
    of: ({ last, states }) => ofCircuits[last]?.[states[last] ?? 'untouched'] ?? nothing,
  };
}

const leastBySet = (space: SearchSpace<SchemeColumn>): Float64Array =>
  leastCosts(space).toGo[0] ?? new Float64Array(1);

const NO_CIRCUIT = -1;

/** The space by the first circuit that a column touches. */
function byCircuit(
  { points, layers, free }: SearchSpace<SchemeColumn>,
  charges: readonly CircuitCharge[],
): ReadonlyMap<number | undefined, SearchSpace<SchemeColumn>> {
  const places = new Map(charges.map(({ circuitId }, i) => [circuitId, i]));
  const placeOf = ({ circuitIds: [first] }: SchemeColumn) =>
    first === undefined ? NO_CIRCUIT : places.get(first);
  const layersOf = new Map<number | undefined, Layer<SchemeColumn>[]>();
  for (const { id, columns } of layers)
    for (const [place, own] of grouped(columns, placeOf)) {
      const so = layersOf.get(place) ?? [];
      so.push({ id, columns: own });
      layersOf.set(place, so);
    }
  const freeOf = grouped(free, placeOf);
  return new Map(
    [...layersOf.keys(), ...freeOf.keys()].map((place) => [
      place,
      { points, layers: layersOf.get(place) ?? [], free: freeOf.get(place) ?? [] },
    ]),
  );
}

function grouped<V, K>(all: readonly V[], keyOf: (one: V) => K): ReadonlyMap<K, readonly V[]> {
  const groups = new Map<K, V[]>();
  for (const one of all) {
    const group = groups.get(keyOf(one));
    if (group === undefined) groups.set(keyOf(one), [one]);
    else group.push(one);
  }
  return groups;
}

/** By set the least of some of it by the one and the rest by the other: 3ⁿ steps. */
function together(one: Float64Array, other: Float64Array): Float64Array {
  const sum = new Float64Array(one.length).fill(Number.POSITIVE_INFINITY);
  for (let taken = 0; taken < one.length; taken++) {
    const cost = one[taken] as number;
    if (cost === Number.POSITIVE_INFINITY) continue;
    const others = one.length - 1 - taken;
    for (let rest = others; ; rest = (rest - 1) & others) {
      const total = cost + (other[rest] as number);
      if (total < (sum[taken | rest] as number)) sum[taken | rest] = total;
      if (rest === 0) break;
    }
  }
  return sum;
}

/** The same for the set of all points alone. */
function leastOfAll(one: Float64Array, other: Float64Array): number {
  const all = one.length - 1;
  let least = Number.POSITIVE_INFINITY;
  for (let taken = 0; taken <= all; taken++)
    least = Math.min(least, (one[taken] as number) + (other[all ^ taken] as number));
  return least;
}
