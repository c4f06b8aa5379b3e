import { inIdOrder } from '../../circuit/id-order.ts';
import { type IdHeap, idHeap } from './id-heap.ts';
import { type ColumnsByMask, type LeastCosts, leastCosts } from './least-costs.ts';
import type { Choice, Column, SearchSpace } from './search-space.ts';

/** The cost of the cheapest choice, without the choice; null where no choice connects every point. */
export function leastCost(space: SearchSpace): number | null {
  const least = leastCosts(space).toGo[0]?.at(-1) ?? Number.POSITIVE_INFINITY;
  return Number.isFinite(least) ? least : null;
}

/** What may be decided of one layer for one set that is left: each column in it, or null for none, cheapest first. */
interface Options<C extends Column> {
  readonly columns: readonly (C | null)[];
  /** By column: its cost and the least for all that is left after it. */
  readonly total: readonly number[];
  readonly waiting: IdHeap;
  /** Those that came out of the queue. */
  readonly sorted: number[];
}

/** A decision for one layer, and those before it. */
interface Decision<C extends Column> {
  readonly before: Decision<C> | null;
  readonly depth: number;
  readonly column: C | null;
}

/** All choices that go on from `before` with one of the options from `place` on; the first of them costs `cost`. */
interface Branch<C extends Column> {
  readonly before: Decision<C> | null;
  readonly layer: number;
  readonly mask: number;
  readonly place: number;
  readonly spent: number;
  readonly cost: number;
  readonly first: Decision<C>;
}

/**
 * Every distinct choice exactly once, cheapest first; the first comes as soon as the least costs are known. Of choices at one cost
 * the one that, at the first layer (by id, free columns last, by their lowest points) where they differ, has the column whose
 * key comes first; none comes last. A* with the exact cost-to-go: nothing is looked at that does not belong to a choice given.
 */
export function* choicesByCost<C extends Column>(space: SearchSpace<C>): Generator<Choice<C>, void> {
  const costs = leastCosts(space);
  const all = 2 ** space.points - 1;
  const least = costs.toGo[0]?.[all] ?? Number.POSITIVE_INFINITY;
  if (!Number.isFinite(least)) return;
  if (all === 0) return yield { cost: 0, columns: [] };
  const search = { costs, options: new Map<number, Options<C>>() };
  const branches: Branch<C>[] = [];
  const queue = idHeap([], (a, b) => isBefore(branches[a] as Branch<C>, branches[b] as Branch<C>));
  const add = (branch: Branch<C> | null): void => {
    if (branch !== null) queue.push(branches.push(branch) - 1);
  };
  add(branchAt(search, { before: null, layer: 0, mask: all, place: 0, spent: 0 }));
  for (let id = queue.pop(); id >= 0; id = queue.pop()) {
    const start = branches[id] as Branch<C>;
    delete branches[id];
    yield { cost: start.cost, columns: columnsOf(descend(search, start, add)) };
  }
}

interface Search<C extends Column> {
  readonly costs: LeastCosts<C>;
  readonly options: Map<number, Options<C>>;
}

/** Follows first options down to a choice; the other choices of each branch on the way are kept for later. */
function descend<C extends Column>(
  search: Search<C>,
  start: Branch<C>,
  keep: (branch: Branch<C> | null) => void,
): Decision<C> {
  for (let branch = start; ; ) {
    keep(branchAt(search, { ...branch, place: branch.place + 1 }));
    const { column } = branch.first;
    const mask = branch.mask ^ (column?.mask ?? 0);
    const spent = branch.spent + (column?.cost ?? 0);
    const layer = Math.min(branch.layer + 1, search.costs.layers.length);
    const next = mask === 0 ? null : branchAt(search, { before: branch.first, layer, mask, place: 0, spent });
    if (next === null) return branch.first;
    branch = next;
  }
}

function branchAt<C extends Column>(
  search: Search<C>,
  { before, layer, mask, place, spent }: Omit<Branch<C>, 'cost' | 'first'>,
): Branch<C> | null {
  const options = optionsAt(search, layer, mask);
  while (options.sorted.length <= place && options.waiting.size > 0)
    options.sorted.push(options.waiting.pop());
  const id = options.sorted[place];
  if (id === undefined) return null;
  const first = { before, depth: (before?.depth ?? -1) + 1, column: options.columns[id] ?? null };
  return { before, layer, mask, place, spent, cost: spent + (options.total[id] ?? 0), first };
}

function optionsAt<C extends Column>({ costs, options }: Search<C>, layer: number, mask: number): Options<C> {
  const name = layer * 2 ** costs.points + mask;
  const known = options.get(name);
  if (known !== undefined) return known;
  const columns: (C | null)[] = [];
  const total: number[] = [];
  collectOptions(costs, layer, mask, (column, cost) => {
    columns.push(column);
    total.push(cost);
  });
  const waiting = idHeap([...total.keys()], (a, b) => {
    const difference = (total[a] as number) - (total[b] as number);
    return difference < 0 || (difference === 0 && keyOrder(columns[a], columns[b]) < 0);
  });
  const made = { columns, total, waiting, sorted: [] };
  options.set(name, made);
  return made;
}

/** Of free columns those with the lowest point that is left, so that no choice is met twice. */
function collectOptions<C extends Column>(
  costs: LeastCosts<C>,
  layer: number,
  mask: number,
  add: (column: C | null, total: number) => void,
): void {
  const own: ColumnsByMask<C> | undefined = costs.layers[layer];
  const after = (own === undefined ? costs.toGo[layer] : costs.toGo[layer + 1]) as Float64Array;
  const { columns, first } = own ?? costs.free;
  const must = own === undefined ? mask & -mask : 0;
  for (let part = mask; part > 0; part = (part - 1) & mask) {
    const rest = after[mask ^ part] as number;
    if ((part & must) !== must || rest === Number.POSITIVE_INFINITY) continue;
    for (let at = first[part] as number; at < (first[part + 1] as number); at++) {
      const column = columns[at] as C;
      add(column, column.cost + rest);
    }
  }
  const without = after[mask] as number;
  if (own !== undefined && without < Number.POSITIVE_INFINITY) add(null, without);
}

function keyOrder(a: Column | null | undefined, b: Column | null | undefined): number {
  if (!a || !b) return Number(!a) - Number(!b);
  return inIdOrder(a.key, b.key);
}

function isBefore<C extends Column>(a: Branch<C>, b: Branch<C>): boolean {
  if (a.cost !== b.cost) return a.cost < b.cost;
  let [one, other] = [a.first, b.first];
  while (one.depth > other.depth && one.before) one = one.before;
  while (other.depth > one.depth && other.before) other = other.before;
  while (one.before !== other.before && one.before && other.before) {
    one = one.before;
    other = other.before;
  }
  return keyOrder(one.column, other.column) < 0;
}

function columnsOf<C extends Column>(last: Decision<C>): readonly C[] {
  const columns: C[] = [];
  for (let at: Decision<C> | null = last; at !== null; at = at.before)
    if (at.column !== null) columns.push(at.column);
  return columns.sort((a, b) => inIdOrder(a.key, b.key));
}
