import { inIdOrder } from '../../circuit/id-order.ts';
import { choicesByCost } from './cheapest-choices.ts';
import { type ColumnList, columnList, priceOfSet } from './column-list.ts';
import { betterPrices, leastShares, sizeOf } from './point-prices.ts';
import type { Choice, Column, SearchSpace } from './search-space.ts';

/** A choice that is good, and how good: for more points than every choice can be looked at for. */
export interface GoodChoice<C extends Column = Column> {
  /** Null where none was found. */
  readonly choice: Choice<C> | null;
  /** No choice costs less. Infinity where it is certain that there is none. */
  readonly bound: number;
  /**
   * What the choice may lie above the cheapest, as a share of the bound: 0 where it is the cheapest, Infinity above a bound of 0,
   * null without a choice.
   */
  readonly gap: number | null;
}

/** Most points that are settled anew together. */
const REPAIR_POINTS = 9;
/** Most columns that are taken out together. */
const REPAIR_COLUMNS = 3;
const MOST_REPAIRS = 250;
/** How often a first choice may be carried on before it is given up. */
const MOST_TRIES = 300;

/**
 * Two choices are begun, one by the points' least shares, one by the prices that the bound was raised with, and each is made better
 * by settling a few columns' points anew, exactly. Up to 30 points; the same space, whatever its order, the same answer.
 */
export function goodChoice<C extends Column>(space: SearchSpace<C>): GoodChoice<C> {
  const list = columnList(space);
  const shares = leastShares(list);
  if (shares.bound === Number.POSITIVE_INFINITY)
    return { choice: null, bound: Number.POSITIVE_INFINITY, gap: null };
  const one = improved(list, firstChoice(list, shares.prices));
  if (one === null) return { choice: null, bound: shares.bound, gap: null };
  const raised = betterPrices(list, shares, costOf(list, one));
  const other = raised.bound >= costOf(list, one) ? one : improved(list, firstChoice(list, raised.prices));
  const best = other !== null && costOf(list, other) < costOf(list, one) ? other : one;
  const cost = costOf(list, best);
  const bound = Math.min(raised.bound, cost);
  const columns = best.map((at) => list.columns[at] as C).sort((a, b) => inIdOrder(a.key, b.key));
  const excess = cost - bound;
  return {
    choice: { cost, columns },
    bound,
    gap: excess === 0 ? 0 : excess / bound,
  };
}

/** Columns by their places in the list. */
type Places = readonly number[];

function costOf({ cost }: ColumnList<Column>, places: Places): number {
  return places.reduce((sum, at) => sum + (cost[at] as number), 0);
}

/** The point that fewest columns can still connect is settled first, by the column that is cheapest against the points' prices. */
function firstChoice(list: ColumnList<Column>, prices: Float64Array): Places | null {
  const { mask, cost } = list;
  const priceOf = priceOfSet(prices);
  const dearness = (at: number): number =>
    ((cost[at] as number) - priceOf(mask[at] as number)) / sizeOf(mask[at] as number);
  let tries = 0;
  const carryOn = (rest: number, taken: Places): Places | null => {
    if (rest === 0) return taken;
    if (++tries > MOST_TRIES) return null;
    const usable = usableIn(list, rest, taken);
    const point = scarcestPoint(list, rest, usable);
    const candidates = usable
      .filter((at) => (mask[at] as number) & (1 << point))
      .map((at) => ({ at, dear: dearness(at) }))
      .sort((a, b) => a.dear - b.dear || a.at - b.at);
    for (const { at } of candidates) {
      const found = carryOn(rest ^ (mask[at] as number), [...taken, at]);
      if (found !== null || tries > MOST_TRIES) return found;
    }
    return null;
  };
  return carryOn(2 ** list.points - 1, []);
}

/** Columns inside the set whose layer is not taken. */
function usableIn({ mask, layer, layers }: ColumnList<Column>, set: number, taken: Places): Places {
  const used = new Set(taken.map((at) => layer[at]).filter((own) => own !== layers));
  const usable: number[] = [];
  for (let at = 0; at < mask.length; at++)
    if (((mask[at] as number) & ~set) === 0 && !used.has(layer[at])) usable.push(at);
  return usable;
}

function scarcestPoint({ points, mask }: ColumnList<Column>, rest: number, usable: Places): number {
  const ways = new Float64Array(points);
  for (const at of usable)
    for (let set = mask[at] as number; set > 0; set &= set - 1) {
      const point = 31 - Math.clz32(set & -set);
      ways[point] = (ways[point] as number) + 1;
    }
  let scarcest = -1;
  for (let point = 0; point < points; point++)
    if (rest & (1 << point) && (scarcest < 0 || (ways[point] as number) < (ways[scarcest] as number)))
      scarcest = point;
  return scarcest;
}

/** Takes columns out, few at a time, and puts in the cheapest there are for their points, until that gains nothing more. */
function improved(list: ColumnList<Column>, start: Places | null): Places | null {
  if (start === null) return null;
  let choice = start.toSorted((a, b) => a - b);
  const tried = new Set<string>();
  for (let gained = true; gained; ) {
    gained = false;
    for (const out of groupsOf(list, choice)) {
      const name = out.join(' ');
      if (tried.has(name)) continue;
      if (tried.size >= MOST_REPAIRS) return choice;
      tried.add(name);
      const kept = choice.filter((at) => !out.includes(at));
      const better = settled(list, out, kept);
      if (better === null) continue;
      choice = [...kept, ...better].sort((a, b) => a - b);
      gained = true;
      break;
    }
  }
  return choice;
}

/** Up to so many columns that connect up to so many points together. */
function groupsOf({ mask }: ColumnList<Column>, choice: Places): readonly Places[] {
  const groups: Places[] = [];
  const grow = (group: Places, from: number, size: number): void => {
    if (group.length > 0) groups.push(group);
    if (group.length === REPAIR_COLUMNS) return;
    for (let next = from; next < choice.length; next++) {
      const at = choice[next] as number;
      const grown = size + sizeOf(mask[at] as number);
      if (grown <= REPAIR_POINTS) grow([...group, at], next + 1, grown);
    }
  };
  grow([], 0, 0);
  return groups.sort((a, b) => a.length - b.length);
}

interface PlacedColumn extends Column {
  readonly at: number;
}

/** The cheapest columns for the points of `out`, by layers that `kept` leaves; null where they are no cheaper. */
function settled(list: ColumnList<Column>, out: Places, kept: Places): Places | null {
  const set = out.reduce((all, at) => all | (list.mask[at] as number), 0);
  const own = Array.from({ length: list.points }, (_, i) => i).filter((i) => set & (1 << i));
  const placed = (at: number): PlacedColumn => ({
    at,
    mask: own.reduce((mask, point, i) => mask | ((((list.mask[at] as number) >>> point) & 1) << i), 0),
    cost: list.cost[at] as number,
    key: (list.columns[at] as Column).key,
  });
  const byLayer = new Map<number, PlacedColumn[]>();
  for (const at of usableIn(list, set, kept)) {
    const layer = list.layer[at] as number;
    const columns = byLayer.get(layer);
    if (columns === undefined) byLayer.set(layer, [placed(at)]);
    else columns.push(placed(at));
  }
  const layers = [...byLayer].filter(([layer]) => layer !== list.layers);
  const first = choicesByCost({
    points: own.length,
    layers: layers.map(([layer, columns]) => ({ id: String(layer).padStart(9, '0'), columns })),
    free: byLayer.get(list.layers) ?? [],
  }).next().value;
  return first && first.cost < costOf(list, out) ? first.columns.map(({ at }) => at) : null;
}
