import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CutPlan, cutPlan } from '#engine/price/buying/cut-plan.ts';
import { leastCostByForce } from './brute-force.ts';
import {
  type CutList,
  cutOffer,
  type ListShape,
  lengthOffer,
  piecesOf,
  randomCutList,
} from './random-cut-list.ts';

const STEPS = 5_000_000;
const planOf = ({ pieces, offers, vanMm }: CutList): CutPlan => cutPlan(pieces, offers, vanMm, STEPS);
const boughtOf = ({ bought }: CutPlan) => bought.map(({ offer, count }) => `${count} × ${offer.key}`);

/** Cable by the metre at £1.12, in coils of 25 m, coils of 50 m and drums of 100 m. */
const cable = [
  cutOffer(1000, 112),
  lengthOffer(25, 1720),
  lengthOffer(50, 3240),
  lengthOffer(100, 6200, 'drum'),
];

const anyShape = (pieces: number): fc.Arbitrary<ListShape> =>
  fc.record({
    pieces: fc.integer({ min: 1, max: pieces }),
    fromMm: fc.constantFrom(300, 1500, 4000),
    toMm: fc.constantFrom(4500, 8500, 12_500),
    wholesM: fc.constantFrom([25, 50, 100], [5, 10, 25], [3], [2, 3], [13, 14]),
    stepsMm: fc.constantFrom([1000], [500], [], [1000, 5000]),
    van: fc.constantFrom(0, 3),
  });
const anyList = (pieces: number): fc.Arbitrary<CutList> =>
  fc
    .tuple(fc.integer({ min: 1, max: 1e6 }), anyShape(pieces))
    .map(([seed, shape]) => randomCutList(seed, shape));

/** Every piece is cut once and in one; no length gives more than it has; what is paid is what is bought. */
function expectSound(list: CutList, plan: CutPlan): void {
  const names = [...plan.cuts.flatMap(({ cuts }) => cuts), ...plan.unserved];
  expect(names.map(({ cause, lengthMm }) => `${cause} ${lengthMm}`).toSorted()).toEqual(
    list.pieces.map(({ cause, lengthMm }) => `${cause} ${lengthMm}`).toSorted(),
  );
  for (const { lengthMm, leftMm, cuts } of plan.cuts) {
    expect(cuts.length).toBeGreaterThan(0);
    expect(leftMm).toBeGreaterThanOrEqual(0);
    expect(cuts.reduce((sum, cut) => sum + cut.lengthMm, leftMm)).toBe(lengthMm);
  }
  expect(new Set(plan.cuts.map(({ from }) => from)).size).toBe(plan.cuts.length);
  const paid = plan.bought.reduce((sum, { offer, count }) => sum + count * offer.millipence, 0);
  expect(plan.millipence).toBe(paid);
  expect(plan.boundMillipence).toBeLessThanOrEqual(paid);
  for (const { offer, count } of plan.bought) {
    const ofOffer = plan.cuts.filter(({ from }) => from.startsWith(`${offer.key}/`));
    if (offer.least === null)
      expect(ofOffer.map(({ lengthMm }) => lengthMm)).toEqual(Array(count).fill(offer.quantity));
    else {
      expect(ofOffer.map(({ lengthMm }) => lengthMm)).toEqual([count * offer.quantity]);
      expect(count * offer.quantity).toBeGreaterThanOrEqual(offer.least);
    }
  }
  for (const { from, lengthMm } of plan.cuts.filter((one) => one.from.startsWith('van/')))
    expect(list.vanMm[Number(from.slice(4)) - 1]).toBe(lengthMm);
}

describe('the cheapest lengths for a cut list', () => {
  it('are one cut length for several short runs, up to the step', () => {
    const plan = planOf({ pieces: piecesOf(5.28, 2.38, 2.21, 1.68), offers: cable, vanMm: [] });
    expect(boughtOf(plan)).toEqual(['12 × cut-1']);
    expect(plan.cuts).toMatchObject([{ from: 'cut-1/1', lengthMm: 12_000, leftMm: 450 }]);
    expect(plan.millipence).toBe(12 * 112_000);
  });

  it('are a coil once that is cheaper than cutting, and the larger one where two small ones are dearer', () => {
    expect(boughtOf(planOf({ pieces: piecesOf(8, 7.5), offers: cable, vanMm: [] }))).toEqual(['1 × coil-25']);
    expect(boughtOf(planOf({ pieces: piecesOf(20, 20), offers: cable, vanMm: [] }))).toEqual(['1 × coil-50']);
    expect(boughtOf(planOf({ pieces: piecesOf(48, 8), offers: cable, vanMm: [] }))).toEqual([
      '1 × coil-50',
      '8 × cut-1',
    ]);
  });

  it('never put a run together: five of 8 m are not to be had from off-cuts of 7 m', () => {
    const vanMm = [7000, 7000, 7000, 7000, 7000, 7000];
    const plan = planOf({ pieces: piecesOf(8, 8, 8, 8, 8), offers: [cutOffer(1000, 112)], vanMm });
    expect(plan.cuts.map(({ from }) => from)).toEqual(['cut-1/1']);
    expect(boughtOf(plan)).toEqual(['40 × cut-1']);
    // Six metres come from them, and so does one run of 7 m exactly.
    const held = planOf({ pieces: piecesOf(7, 6, 8), offers: [cutOffer(1000, 112)], vanMm });
    expect(held.cuts.map(({ from }) => from)).toEqual(['van/1', 'van/2', 'cut-1/1']);
  });

  it('fit the van’s lengths by their place in it', () => {
    const plan = planOf({ pieces: piecesOf(9, 3), offers: cable, vanMm: [3500, 9200] });
    expect(plan.cuts.map(({ from, leftMm }) => [from, leftMm])).toEqual([
      ['van/1', 500],
      ['van/2', 200],
    ]);
    expect([plan.millipence, plan.bought]).toEqual([0, []]);
  });

  it('name the pieces that neither the list nor the van is long enough for, and pay nothing for them', () => {
    const offers = [lengthOffer(25, 1720)];
    const plan = planOf({ pieces: piecesOf(27, 26, 10), offers, vanMm: [26_500] });
    expect(plan.unserved).toMatchObject([{ lengthMm: 27_000 }]);
    expect(plan.cuts.map(({ from }) => from)).toEqual(['van/1', 'coil-25/1']);
    expect([plan.millipence, plan.boundMillipence]).toEqual([1_720_000, 1_720_000]);
    expect(planOf({ pieces: piecesOf(3), offers: [], vanMm: [] })).toMatchObject({
      millipence: 0,
      unserved: [{ cause: 'p1' }],
    });
    expect(planOf({ pieces: [], offers: cable, vanMm: [] })).toMatchObject({ millipence: 0, cuts: [] });
  });

  it('are of equal cost the fewest lengths, then what is listed first', () => {
    const offers = [cutOffer(1000, 100), lengthOffer(5, 500), lengthOffer(10, 1000, 'drum')];
    expect(boughtOf(planOf({ pieces: piecesOf(5, 5), offers, vanMm: [] }))).toEqual(['1 × drum-10']);
    const twice = [lengthOffer(10, 1000), { ...lengthOffer(10, 1000), key: 'coil-10-no-2' }];
    expect(boughtOf(planOf({ pieces: piecesOf(5), offers: twice, vanMm: [] }))).toEqual(['1 × coil-10']);
  });

  it('cost what trying every assignment of up to six pieces comes to, and are proved', () => {
    fc.assert(
      fc.property(anyList(6), (list) => {
        const plan = planOf(list);
        expectSound(list, plan);
        const least = leastCostByForce(list);
        if (least === null) expect(plan.unserved.length).toBeGreaterThan(0);
        else expect([plan.millipence, plan.boundMillipence, plan.unserved]).toEqual([least, least, []]);
      }),
      { seed: 41, numRuns: 500 },
    );
  });

  it('are sound and proved up to twenty pieces; where the van alone has lengths for many, sound', () => {
    fc.assert(
      fc.property(anyList(20), (list) => {
        const plan = planOf(list);
        expectSound(list, plan);
        const longestMm = Math.max(
          ...list.offers.map(({ least, quantity }) => (least === null ? quantity : 1e9)),
        );
        const areOnSale = list.pieces.every(({ lengthMm }) => lengthMm <= longestMm);
        if (areOnSale) expect([plan.boundMillipence, plan.unserved]).toEqual([plan.millipence, []]);
      }),
      { seed: 42, numRuns: 150 },
    );
  });

  it('never cost less for a piece more or longer', () => {
    fc.assert(
      fc.property(anyList(12), fc.nat(11), (list, which) => {
        const [cut] = list.offers.filter(({ least }) => least !== null);
        fc.pre(cut !== undefined);
        const all = planOf(list).millipence;
        const gone = which % list.pieces.length;
        const fewer = { ...list, pieces: list.pieces.toSpliced(gone, 1) };
        const shorter = {
          ...list,
          pieces: piecesOf(
            ...list.pieces.map(
              ({ lengthMm }, i) => (i === gone ? Math.max(10, lengthMm - 500) : lengthMm) / 1e3,
            ),
          ),
        };
        expect(planOf(fewer).millipence).toBeLessThanOrEqual(all);
        expect(planOf(shorter).millipence).toBeLessThanOrEqual(all);
      }),
      { seed: 43, numRuns: 150 },
    );
  });

  it('are never cheaper for a dearer offer or one less, and never dearer for a length in the van', () => {
    fc.assert(
      fc.property(anyList(12), fc.nat(4), fc.integer({ min: 1, max: 900 }), (list, which, tens) => {
        const before = planOf(list);
        const one = which % list.offers.length;
        const dearer = list.offers.map((offer, i) =>
          i === one ? { ...offer, millipence: offer.millipence + 7000 } : offer,
        );
        expect(planOf({ ...list, offers: dearer }).millipence).toBeGreaterThanOrEqual(before.millipence);
        if (before.unserved.length > 0) return;
        expect(planOf({ ...list, vanMm: [...list.vanMm, tens * 10] }).millipence).toBeLessThanOrEqual(
          before.millipence,
        );
        const without = planOf({ ...list, offers: list.offers.toSpliced(one, 1) });
        if (without.unserved.length === 0)
          expect(without.millipence).toBeGreaterThanOrEqual(before.millipence);
      }),
      { seed: 44, numRuns: 150 },
    );
  });

  it('do not hang on the order in which pieces are named or lengths lie in the van', () => {
    fc.assert(
      fc.property(anyList(14), fc.integer(), (list, seed) => {
        const plan = planOf(list);
        const shuffled = list.pieces.map(({ cause }, i) => ({
          cause,
          key: (i * 7919 + Math.abs(seed % 1009)) % 101,
        }));
        const order = shuffled
          .toSorted((a, b) => a.key - b.key || (a.cause < b.cause ? -1 : 1))
          .map(({ cause }) => cause);
        const renamed = list.pieces.map((piece, i) => ({ ...piece, cause: order[i] ?? piece.cause }));
        const again = planOf({ ...list, pieces: renamed, vanMm: list.vanMm.toReversed() });
        expect([again.millipence, boughtOf(again)]).toEqual([plan.millipence, boughtOf(plan)]);
        const inLengths = ({ cuts }: CutPlan) =>
          cuts
            .map(({ lengthMm, leftMm, cuts: cut }) =>
              [lengthMm, leftMm, ...cut.map((piece) => piece.lengthMm)].join(' '),
            )
            .toSorted();
        expect(inLengths(again)).toEqual(inLengths(plan));
        expect(planOf(list)).toEqual(plan);
      }),
      { seed: 45, numRuns: 100 },
    );
  });
});

describe('more than twenty pieces', () => {
  const long: ListShape = {
    pieces: 34,
    fromMm: 1500,
    toMm: 8500,
    wholesM: [25, 50, 100],
    stepsMm: [1000],
    van: 2,
  };

  it('still give a plan that serves, with a bound that holds and is never above what more effort finds', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const list = randomCutList(seed, long);
      const quick = cutPlan(list.pieces, list.offers, list.vanMm, 0);
      const plan = cutPlan(list.pieces, list.offers, list.vanMm, 1_000_000);
      for (const one of [quick, plan]) expectSound(list, one);
      expect(quick.boundMillipence).toBeLessThanOrEqual(plan.millipence);
      expect(plan.millipence).toBeLessThanOrEqual(quick.millipence);
      expect(plan.boundMillipence).toBeGreaterThanOrEqual(quick.boundMillipence);
    }
  });

  it('of a list with many sizes are bought for all the same, with a bound that holds', () => {
    const sizes: ListShape = { ...long, pieces: 60, wholesM: [5, 6, 8, 10, 12, 20, 25, 30, 50, 100] };
    for (let seed = 1; seed <= 4; seed++) {
      const list = randomCutList(seed, sizes);
      const plan = cutPlan(list.pieces, list.offers, list.vanMm, 20_000);
      expectSound(list, plan);
      expect(plan.unserved).toEqual([]);
      expect(plan.millipence / plan.boundMillipence).toBeLessThan(1.1);
    }
  });

  it('do not go too deep, however many there are', () => {
    const list = randomCutList(5, { ...long, pieces: 400 });
    const plan = cutPlan(list.pieces, list.offers, list.vanMm, 100_000);
    expectSound(list, plan);
    expect(plan.millipence / plan.boundMillipence).toBeLessThan(1.1);
  });
});

describe('the time that a cut list takes', () => {
  /** The time of the clock or of the processor, whichever is less: what else the machine does counts in neither. */
  function msOf(work: () => unknown): number {
    const used = process.cpuUsage();
    const start = performance.now();
    work();
    const clockMs = performance.now() - start;
    const { user, system } = process.cpuUsage(used);
    return Math.min(clockMs, (user + system) / 1000);
  }

  it('of twenty runs is 50 ms at most', () => {
    const runs: ListShape = {
      pieces: 20,
      fromMm: 1500,
      toMm: 8500,
      wholesM: [25, 50, 100],
      stepsMm: [1000],
      van: 2,
    };
    const times = Array.from({ length: 120 }, (_, seed) => {
      const list = randomCutList(seed + 1, runs);
      return msOf(() => expect(planOf(list).boundMillipence).toBe(planOf(list).millipence));
    });
    // Each was worked twice. The first ones are slow until the code is compiled.
    expect(Math.max(...times.slice(20)) / 2).toBeLessThan(50);
  });
});
