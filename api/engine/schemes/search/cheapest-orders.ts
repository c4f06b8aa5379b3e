/** Costs between n wanted points, symmetric; infinite where no cable can be laid. */
export type Costs = readonly (readonly number[])[];

/** The cheapest order through one set of points, from one end to the other. */
export interface Order {
  readonly cost: number;
  readonly order: readonly number[];
}

/**
 * For every set of points the cheapest way from A through each of them once to B, by growing sets (Held and Karp 1962,
 * "A dynamic programming approach to sequencing problems"). Ties: the lower last point.
 *
 * @returns by mask; index 0, and sets that no order joins, are null.
 */
export function cheapestOrders(
  n: number,
  between: Costs,
  { fromA, fromB }: { readonly fromA: readonly number[]; readonly fromB: readonly number[] },
): readonly (Order | null)[] {
  const size = 1 << n;
  const best = new Float64Array(size * n).fill(Number.POSITIVE_INFINITY);
  const before = new Int8Array(size * n).fill(-1);
  for (let i = 0; i < n; i += 1) best[(1 << i) * n + i] = fromA[i] ?? Number.POSITIVE_INFINITY;
  for (let mask = 1; mask < size; mask += 1)
    for (let last = 0; last < n; last += 1) {
      const so = best[mask * n + last] ?? Number.POSITIVE_INFINITY;
      if (!Number.isFinite(so)) continue;
      for (let next = 0; next < n; next += 1) {
        if ((mask >> next) & 1) continue;
        const at = (mask | (1 << next)) * n + next;
        const cost = so + (between[last]?.[next] ?? Number.POSITIVE_INFINITY);
        if (cost >= (best[at] ?? 0)) continue;
        best[at] = cost;
        before[at] = last;
      }
    }
  return Array.from({ length: size }, (_, mask) => orderOf(mask, { n, best, before, fromB }));
}

interface Table {
  readonly n: number;
  readonly best: Float64Array;
  readonly before: Int8Array;
  readonly fromB: readonly number[];
}

function orderOf(mask: number, { n, best, before, fromB }: Table): Order | null {
  let last = -1;
  let cost = Number.POSITIVE_INFINITY;
  for (let i = 0; i < n; i += 1) {
    const whole =
      ((mask >> i) & 1 ? (best[mask * n + i] ?? Number.POSITIVE_INFINITY) : Number.POSITIVE_INFINITY) +
      (fromB[i] ?? Number.POSITIVE_INFINITY);
    if (whole < cost) [cost, last] = [whole, i];
  }
  if (last < 0) return null;
  const order: number[] = [];
  for (let left = mask, at = last; at >= 0; ) {
    order.unshift(at);
    const previous = before[left * n + at] ?? -1;
    left &= ~(1 << at);
    at = previous;
  }
  return { cost, order };
}
