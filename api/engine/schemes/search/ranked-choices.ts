import type { Choice, Column, SearchSpace } from './search-space.ts';

/** Gives complete choices of a space, cheapest first, each once. */
export type RankChoices = <C extends Column>(space: SearchSpace<C>) => Generator<Choice<C>>;

const inKeyOrder = (a: { readonly key: string }, b: { readonly key: string }): number =>
  a.key < b.key ? -1 : a.key > b.key ? 1 : 0;

interface Node<C> {
  readonly stage: number;
  readonly left: number;
  readonly cost: number;
  readonly bound: number;
  readonly chosen: readonly C[];
}

/**
 * Every complete choice in the order of its cost: best first over the layers in their order, with the cheapest way to
 * finish, worked out beforehand for every layer and every set of points that is left, as the exact cost to go. After
 * the layers come the free columns, each time one that holds the lowest point that is left. Exact; memory and time
 * grow as layers × columns and 2ⁿ, so for a dozen points at the most.
 */
export function* rankedChoices<C extends Column>(space: SearchSpace<C>): Generator<Choice<C>> {
  const stages = [...space.layers.map(({ columns }) => columns), null];
  const toGo = costsToGo(space);
  const all = (1 << space.points) - 1;
  const queue = new Heap<Node<C>>((a, b) => a.bound - b.bound || b.stage - a.stage);
  const put = (node: Omit<Node<C>, 'bound'>): void => {
    const bound = node.cost + (toGo[node.stage]?.[node.left] ?? Number.POSITIVE_INFINITY);
    if (Number.isFinite(bound)) queue.push({ ...node, bound });
  };
  put({ stage: 0, left: all, cost: 0, chosen: [] });
  for (let node = queue.pop(); node !== undefined; node = queue.pop()) {
    const { stage, left, cost, chosen } = node;
    if (left === 0) {
      yield { millipence: cost, columns: chosen.toSorted(inKeyOrder) };
      continue;
    }
    const layer = stages[stage];
    const columns = layer ?? space.free.filter(({ mask }) => mask & left & -left);
    if (layer) put({ stage: stage + 1, left, cost, chosen });
    for (const column of columns)
      if ((column.mask & left) === column.mask)
        put({
          stage: layer ? stage + 1 : stage,
          left: left & ~column.mask,
          cost: cost + column.millipence,
          chosen: [...chosen, column],
        });
  }
}

/** By stage (layers, then the free class) and set of points left: the least that connecting them costs from there on. */
function costsToGo<C extends Column>({ points, layers, free }: SearchSpace<C>): readonly Float64Array[] {
  const size = 1 << points;
  const last = new Float64Array(size).fill(Number.POSITIVE_INFINITY);
  last[0] = 0;
  for (let left = 1; left < size; left += 1)
    for (const { mask, millipence } of free)
      if (mask & left & -left && (mask & left) === mask)
        last[left] = Math.min(last[left] ?? 0, millipence + (last[left & ~mask] ?? Number.POSITIVE_INFINITY));
  const rows = [last];
  for (const { columns } of layers.toReversed()) {
    const next = rows[0] ?? last;
    const row = Float64Array.from(next);
    for (const { mask, millipence } of columns) {
      const rest = (size - 1) & ~mask;
      for (let other = rest; ; other = (other - 1) & rest) {
        const cost = millipence + (next[other] ?? Number.POSITIVE_INFINITY);
        if (cost < (row[other | mask] ?? 0)) row[other | mask] = cost;
        if (other === 0) break;
      }
    }
    rows.unshift(row);
  }
  return rows;
}

/** The least first. */
class Heap<T> {
  readonly #items: T[] = [];
  readonly #compare: (a: T, b: T) => number;

  constructor(compare: (a: T, b: T) => number) {
    this.#compare = compare;
  }

  push(item: T): void {
    const items = this.#items;
    items.push(item);
    for (let at = items.length - 1; at > 0; ) {
      const parent = (at - 1) >> 1;
      if (!this.#swapIfLess(at, parent)) break;
      at = parent;
    }
  }

  pop(): T | undefined {
    const items = this.#items;
    const first = items[0];
    const end = items.pop();
    if (items.length === 0 || end === undefined) return first;
    items[0] = end;
    for (let at = 0; ; ) {
      const [left, right] = [2 * at + 1, 2 * at + 2];
      const child = this.#isLess(right, left) ? right : left;
      if (!this.#swapIfLess(child, at)) break;
      at = child;
    }
    return first;
  }

  #isLess(a: number, b: number): boolean {
    const [x, y] = [this.#items[a], this.#items[b]];
    return x !== undefined && y !== undefined && this.#compare(x, y) < 0;
  }

  #swapIfLess(a: number, b: number): boolean {
    const [x, y] = [this.#items[a], this.#items[b]];
    if (x === undefined || y === undefined || this.#compare(x, y) >= 0) return false;
    this.#items[a] = y;
    this.#items[b] = x;
    return true;
  }
}
