import type { Offer } from './purchase.ts';

/** What is bought of a thing that is only counted or weighed; of what is cut off, the steps. */
export interface PackMix {
  readonly bought: readonly { readonly offer: Offer; readonly count: number }[];
  readonly millipence: number;
  readonly boundMillipence: number;
}

/** Beyond so many shares of a need, the pack of the best rate is taken for granted. */
const MOST_SHARES = 100_000;

/** A pack in the shares that need and packs are counted in. */
interface Pack {
  readonly offer: Offer;
  readonly shares: number;
  readonly millipence: number;
}

/** Counts by the order of the packs. */
interface Mix {
  readonly counts: readonly number[];
  readonly millipence: number;
  /** What nothing costs less than. */
  readonly bound: number;
}

/**
 * The packs of least cost that hold at least what is needed; of equal ones the fewest packs, then those listed first.
 *
 * @param needed and the offers' quantities in whole numbers of one unit.
 */
export function packMix(needed: number, offers: readonly Offer[]): PackMix {
  if (needed <= 0 || offers.length === 0) return { bought: [], millipence: 0, boundMillipence: 0 };
  const share = offers.reduce((divisor, { quantity }) => greatestDivisor(divisor, quantity), 0);
  const packs = offers.map(
    (offer): Pack => ({ offer, shares: offer.quantity / share, millipence: offer.millipence }),
  );
  const shares = Math.ceil(needed / share);
  // What is not sold by the single step is left out, or bought from its least on; two such kinds are not tried together.
  const hasLeast = ({ offer: { least, quantity } }: Pack) => least !== null && least > quantity;
  const free = packs.map((pack) => !hasLeast(pack));
  const isTried = packs.filter(hasLeast).length < 2;
  const mixes = [
    free.includes(true) ? mixOf(shares, packs, free) : null,
    ...packs.map((pack, i) => (hasLeast(pack) ? mixFromLeast(shares, packs, free, i) : null)),
  ].filter((mix) => mix !== null);
  const [best] = mixes.toSorted((a, b) => a.millipence - b.millipence || total(a.counts) - total(b.counts));
  return {
    bought: offers.flatMap((offer, i) => {
      const count = best?.counts[i] ?? 0;
      return count === 0 ? [] : [{ offer, count }];
    }),
    millipence: best?.millipence ?? 0,
    boundMillipence: isTried ? Math.min(...mixes.map(({ bound }) => bound)) : leastByRate(shares, packs),
  };
}

/** What shares cost at the best rate of all: nothing that holds them costs less. */
const leastByRate = (shares: number, packs: readonly Pack[]): number =>
  Math.floor(shares * Math.min(...packs.map((pack) => pack.millipence / pack.shares)));

const total = (counts: readonly number[]): number => counts.reduce((sum, count) => sum + count, 0);

function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}

/** The least of a cut one, and the rest by the step or in packs. */
function mixFromLeast(shares: number, packs: readonly Pack[], free: readonly boolean[], cut: number): Mix {
  const { offer, shares: each, millipence } = packs[cut] as Pack;
  const steps = (offer.least ?? 0) / offer.quantity;
  const rest = mixOf(
    shares - steps * each,
    packs,
    free.map((isFree, i) => isFree || i === cut),
  );
  return {
    counts: rest.counts.map((count, i) => count + (i === cut ? steps : 0)),
    millipence: rest.millipence + steps * millipence,
    bound: rest.bound + steps * millipence,
  };
}

/** The mix of the packs that are free to be bought singly. */
function mixOf(shares: number, packs: readonly Pack[], free: readonly boolean[]): Mix {
  const usable = packs.flatMap((pack, place) => (free[place] === true ? [{ ...pack, place }] : []));
  const [best] = usable.toSorted(
    (a, b) => a.millipence / a.shares - b.millipence / b.shares || b.shares - a.shares,
  );
  const counts = packs.map(() => 0);
  if (best === undefined || shares <= 0) return { counts, millipence: 0, bound: 0 };
  const granted = Math.max(0, Math.floor((shares - MOST_SHARES) / best.shares));
  counts[best.place] = granted;
  const restShares = shares - granted * best.shares;
  const last = lastPacks(restShares, usable);
  for (let need = restShares; need > 0; ) {
    const pack = usable[last[need] as number] as (typeof usable)[number];
    counts[pack.place] = (counts[pack.place] as number) + 1;
    need -= pack.shares;
  }
  const millipence = counts.reduce((sum, count, i) => sum + count * (packs[i]?.millipence ?? 0), 0);
  // With packs granted, the best rate for all of it is what can be said.
  return {
    counts,
    millipence,
    bound: granted === 0 ? millipence : leastByRate(shares, usable),
  };
}

/** For every need up to one, a pack of its cheapest mix: by cost, then by the number of packs, then the first listed. */
function lastPacks(shares: number, packs: readonly Pack[]): Int32Array {
  const last = new Int32Array(shares + 1);
  const cost = new Float64Array(shares + 1);
  const number = new Int32Array(shares + 1);
  for (let need = 1; need <= shares; need++) {
    let [leastCost, leastNumber] = [Number.POSITIVE_INFINITY, 0];
    for (const [i, pack] of packs.entries()) {
      const before = Math.max(0, need - pack.shares);
      const [withCost, withNumber] = [
        (cost[before] as number) + pack.millipence,
        (number[before] as number) + 1,
      ];
      if (withCost > leastCost || (withCost === leastCost && withNumber >= leastNumber)) continue;
      [leastCost, leastNumber] = [withCost, withNumber];
      last[need] = i;
    }
    cost[need] = leastCost;
    number[need] = leastNumber;
  }
  return last;
}
