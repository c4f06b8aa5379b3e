import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inferCircuit } from '#engine/proof/readings/infer-circuit.ts';
import type { InferredCircuit, InferredPoint } from '#engine/proof/readings/inferred-circuit.ts';
import type { Job } from '#model/job.ts';
import { type DemoName, demoJob } from '../../demo-jobs/demo-estimates.ts';
import { endsOf, jobSaying, linkedAt, loopReading, type SaidPoint } from './reading-jobs.ts';
import { drawCircuit, noises, readCircuit, seededRandom } from './simulated-readings.ts';

const infer = (job: Job): InferredCircuit => inferCircuit(job, job.circuits[0]?.id ?? '');
const at = (inferred: InferredCircuit, id: string): InferredPoint => {
  const point = inferred.points.find((each) => each.point === id);
  if (point === undefined) throw new Error(`no point ${id}`);
  return point;
};

/** Legs from end A to end B, m, and spurs with parent and length, as the demo houses are laid out. */
const demoCircuits: Readonly<
  Record<string, { legsM: readonly number[]; spur: [string, string, number] | null }>
> = {
  'saltglass-row': {
    legsM: [6.3, 6.2, 3.6, 2.4, 7.3, 7, 5.3, 8.5, 7.9, 6.6],
    spur: ['s1-bedroom', 'r9-bedroom', 7.1],
  },
  'fernlow-close': {
    legsM: [7.9, 10.1, 7.5, 5.9, 5.7, 6, 5.5, 7.2, 6.2, 8.7],
    spur: ['a10-lounge', 'a1-hallway', 4.1],
  },
  'quarrel-court': { legsM: [5.7, 1.3, 9, 13.9, 5.5, 3.6, 9.2, 5.2], spur: null },
};

/** The demo's linked readings by themselves: no crossed ones, no cables counted, no cables recorded. */
function barely(job: Job, keep: (loop: string, from: string) => boolean): Job {
  return {
    ...job,
    legs: [],
    points: job.points.map(({ asFound: _, ...point }) => point),
    readings: job.readings.filter((each) => each.kind === 'loop' && keep(each.loop, each.from)),
  };
}

const numbered = (id: string): number => Number(id.match(/^[a-z](\d+)/)?.[1]);

describe('the circuits of the demo houses from their readings', () => {
  it.each(Object.entries(demoCircuits))('%s: order, legs, spur and parent', (name, { legsM, spur }) => {
    const whole = demoJob(name as DemoName);
    const linkedOnly = barely(whole, (_, from) => from !== 'crossed');
    for (const job of [whole, linkedOnly]) {
      const inferred = infer(job);
      expect(inferred.order.answer).toBe('told');
      expect(inferred.order.points.map(numbered)).toEqual(legsM.slice(1).map((_, i) => i + 1));
      expect(inferred.order.confidence).toBeGreaterThan(0.97);
      inferred.legs.forEach((leg, i) => {
        const off = Math.abs((leg.lengthMm ?? 0) - (legsM[i] ?? 0) * 1000);
        expect(off).toBeLessThan(450);
        expect(off).toBeLessThan(1.6 * (leg.plusMinusMm ?? 0));
      });
      const spurs = inferred.points.filter(({ role }) => role === 'spur');
      expect(spurs.map(({ point, parents }) => [point, parents[0]?.point])).toEqual(
        spur === null ? [] : [[spur[0], spur[1]]],
      );
      if (spur !== null) expect(Math.abs((spurs[0]?.spurMm ?? 0) - spur[2] * 1000)).toBeLessThan(400);
    }
  });

  it.each(Object.keys(demoCircuits))('%s: nothing contradicts what is recorded, nothing misfits', (name) => {
    const { contradictions, causes, loop, next } = infer(demoJob(name as DemoName));
    expect([contradictions, causes, next]).toEqual([[], [], []]);
    expect(loop.cpc?.areaMm2).toBe(1.5);
    expect(loop.lineMm2By).toBe('survey');
  });

  it('a wrongly recorded order, spur and length are told apart from what is read', () => {
    const job = demoJob('saltglass-row');
    const swap = (id: string): string =>
      ({ 'r2-living1': 'r6-kitchen', 'r6-kitchen': 'r2-living1' })[id] ?? id;
    const legs = job.legs.map((leg) => ({
      ...leg,
      from: 'point' in leg.from ? { point: swap(leg.from.point) } : leg.from,
      to: 'point' in leg.to ? { point: swap(leg.to.point) } : leg.to,
      ...(leg.id === 'leg-r03r04' ? { lengthMm: 9_000 } : {}),
    }));
    const { contradictions } = infer({ ...job, legs });
    const order = contradictions.find(({ kind }) => kind === 'order');
    expect(order?.subjects).toEqual(expect.arrayContaining(['r2-living1', 'r6-kitchen']));
    expect(order?.confidence).toBeGreaterThan(0.99);
    expect(contradictions.find(({ kind }) => kind === 'leg-length')?.subjects).toEqual(['leg-r03r04']);
  });

  it('recorded from the other end is no other order', () => {
    const job = demoJob('quarrel-court');
    const legs = job.legs.map((leg) => {
      const turned = (end: (typeof leg)['from']): (typeof leg)['from'] =>
        'origin' in end && end.end ? { ...end, end: end.end === 'A' ? 'B' : 'A' } : end;
      return { ...leg, from: turned(leg.from), to: turned(leg.to) };
    });
    expect(infer({ ...job, legs }).contradictions.map(({ kind }) => kind)).toContain('ends-swapped');
  });
});

describe('a circuit from fewer readings', () => {
  const job = demoJob('fernlow-close');

  it('one loop alone gives the same order', () => {
    for (const loop of ['L-N', 'L-cpc']) {
      const one = barely(job, (each, from) => from === 'end-to-end' || (from !== 'crossed' && each === loop));
      expect(infer(one).order.points.map(numbered)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    }
  });

  it('crossed readings alone cannot say the order, and show the spur', () => {
    const crossed = infer(barely(job, (_, from) => from === 'crossed' || from === 'end-to-end'));
    expect(crossed.order.answer).toBe('cannot-say');
    expect([crossed.order.points, crossed.legs]).toEqual([[], []]);
    expect(crossed.points.every(({ fraction }) => fraction === null)).toBe(true);
    expect(at(crossed, 'a10-lounge').role).toBe('spur');
    expect(crossed.next.map(({ kind, end }) => [kind, end])).toEqual(
      expect.arrayContaining([
        ['linked', 'A'],
        ['linked', 'B'],
      ]),
    );
  });

  it('end to end alone cannot say the order, and gives the length', () => {
    const ends = infer(barely(job, (_, from) => from === 'end-to-end'));
    expect(ends.order.answer).toBe('cannot-say');
    expect(ends.loop.lengthMm).toBeCloseTo((0.52 / 0.00741) * 1000, 6);
  });

  it('one end of one loop cannot say the order: a spur and a longer way round read the same', () => {
    const fromA = infer(
      barely(job, (loop, from) => from === 'end-to-end' || (loop === 'L-N' && from === 'A')),
    );
    expect(fromA.order.answer).toBe('cannot-say');
    expect(fromA.next.some(({ kind }) => kind === 'linked')).toBe(true);
  });

  it('from one end of one loop and from the other of the other the circuit is told', () => {
    const half = infer(
      barely(
        job,
        (loop, from) =>
          from === 'end-to-end' || `${loop} ${from}` === 'L-N A' || `${loop} ${from}` === 'L-cpc B',
      ),
    );
    expect(half.order.points.map(numbered)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(at(half, 'a10-lounge').role).toBe('spur');
  });

  it('cables counted at the plates make one end enough', () => {
    const counted = jobSaying(endsOf(50), [
      { id: 'p1', cables: 2, read: { 'L-N': [0.01482 * 10, null] } },
      { id: 'p2', cables: 2, read: { 'L-N': [0.01482 * 25, null] } },
      { id: 'p3', cables: 2, read: { 'L-N': [0.01482 * 18, null] } },
    ]);
    expect(infer(counted).order.points).toEqual(['p1', 'p3', 'p2']);
  });

  it('nothing read says nothing, and no circuit of that name neither', () => {
    const empty = infer(jobSaying({}, [{ id: 'p1' }]));
    expect([empty.order.answer, empty.legs, empty.contradictions, empty.causes]).toEqual([
      'cannot-say',
      [],
      [],
      [],
    ]);
    expect(at(empty, 'p1').role).toBe('cannot-say');
    expect(inferCircuit(jobSaying({}, []), 'no-such-one').points).toEqual([]);
  });

  it('without end to end readings the fractions stand and metres do not', () => {
    const points = [8, 20, 33].map((m, i) => ({ id: `p${i}`, read: linkedAt(45, m) }));
    const inferred = infer(jobSaying({}, points));
    expect(inferred.order.points).toEqual(['p0', 'p1', 'p2']);
    expect(at(inferred, 'p1').fraction).toBeCloseTo(20 / 45, 6);
    expect([inferred.loop.lengthMm, inferred.legs[0]?.lengthMm]).toEqual([null, null]);
    expect(inferred.next.map(({ kind, loop }) => [kind, loop])).toContainEqual(['end-to-end', 'L']);
  });
});

const ring = (
  extra: readonly SaidPoint[] = [],
  counted: Readonly<Record<string, number>> = {},
): readonly SaidPoint[] => [
  ...[6, 13, 19, 28, 36, 44].map((m, i) => {
    const id = `p${i}`;
    const cables = counted[id];
    return { id, read: linkedAt(50, m), ...(cables === undefined ? {} : { cables }) };
  }),
  ...extra,
];

describe('spurs', () => {
  it('a short excess reads as a spur or as poor contact of the same resistance', () => {
    const said = infer(
      jobSaying(
        endsOf(50),
        ring([{ id: 'odd', read: { 'L-N': [0.01482 * 20 + 0.025, 0.01482 * 30 + 0.025] } }]),
      ),
    );
    const odd = at(said, 'odd');
    expect(odd.spurConfidence).toBeGreaterThan(0.2);
    expect(odd.contactMilliohm).toBe(25);
    expect(odd.spurMm).toBeGreaterThan(1_400);
    expect(odd.spurMm).toBeLessThan(2_000);
  });

  it('one cable at the plate is a spur whatever is read, two are hard to gainsay', () => {
    const odd = (cables: number): SaidPoint => ({
      id: 'odd',
      cables,
      read: { 'L-N': [0.01482 * 20 + 0.015, 0.01482 * 30 + 0.015] },
    });
    expect(at(infer(jobSaying(endsOf(50), ring([odd(1)]))), 'odd')).toMatchObject({
      role: 'spur',
      spurConfidence: 1,
    });
    expect(at(infer(jobSaying(endsOf(50), ring([odd(2)]))), 'odd').spurConfidence).toBeLessThan(0.2);
  });

  it('two cables at a plate that reads as a long spur: the count contradicts', () => {
    const said = infer(jobSaying(endsOf(50), ring([{ id: 'odd', cables: 2, read: linkedAt(50, 20, 8) }])));
    expect(at(said, 'odd').role).toBe('spur');
    expect(said.contradictions.map(({ kind, subjects }) => [kind, subjects])).toContainEqual([
      'cable-count',
      ['odd'],
    ]);
  });

  it('a plate with two cables gives no spur: then it is another, or a joint', () => {
    const spur: SaidPoint = { id: 'spur', read: linkedAt(50, 19, 5) };
    const open = at(infer(jobSaying(endsOf(50), ring([spur]))), 'spur').parents;
    const counted = at(infer(jobSaying(endsOf(50), ring([spur], { p2: 2 }))), 'spur').parents;
    expect(open[0]?.point).toBe('p2');
    const share = (parents: typeof open): number =>
      parents.find(({ point }) => point === 'p2')?.confidence ?? 0;
    expect(share(counted)).toBeLessThan(share(open));
  });

  it('between two points, far from both, it is a joint in the cable', () => {
    const [first] = at(
      infer(jobSaying(endsOf(50), ring([{ id: 'spur', read: linkedAt(50, 23.5, 5) }]))),
      'spur',
    ).parents;
    expect(first).toMatchObject({ point: null, between: { before: 'p2', after: 'p3' } });
  });

  it('what no reading can tell is told as such', () => {
    const two = ring([
      { id: 's1', read: linkedAt(50, 19, 4) },
      { id: 's2', read: linkedAt(50, 19, 7) },
    ]);
    const kinds = infer(jobSaying(endsOf(50), two)).undecidable.map(({ kind }) => kind);
    expect(new Set(kinds)).toEqual(new Set(['tap-or-joint', 'chained-or-separate', 'hidden-point']));
  });

  it('never says safe, and of the ring without a count says to open the plate', () => {
    const said = infer(jobSaying(endsOf(50), ring([{ id: 'spur', read: linkedAt(50, 19, 4) }])));
    expect(JSON.stringify(said)).not.toMatch(/safe/i);
    expect(at(said, 'p1').words).toMatch(/on the ring by these readings.*open the plate and count cables/i);
  });
});

describe('readings as they come', () => {
  it('the leads that were not taken off are, and the temperature is reckoned with', () => {
    const plain = jobSaying(endsOf(50), ring());
    const warm = {
      ...plain,
      readings: plain.readings.map((each) =>
        each.kind === 'loop' ? { ...each, ohm: each.ohm * 1.04 + 0.08, nullOhm: 0.08, conductorC: 30 } : each,
      ),
    };
    const [one, other] = [infer(plain), infer(warm)];
    expect(other.loop.r1Ohm).toBeCloseTo(one.loop.r1Ohm ?? 0, 9);
    for (const [i, leg] of other.legs.entries())
      expect(leg.lengthMm).toBeCloseTo(one.legs[i]?.lengthMm ?? 0, 3);
  });

  it('leads left in everywhere are found by the ring’s majority, and move nothing', () => {
    const job = jobSaying(endsOf(50), ring([{ id: 'spur', read: linkedAt(50, 19, 5) }]));
    const withLeads = {
      ...job,
      readings: job.readings.map((each) =>
        each.kind === 'loop' && each.from !== 'end-to-end' ? { ...each, ohm: each.ohm + 0.09 } : each,
      ),
    };
    const said = infer(withLeads);
    expect(said.order.points).toEqual(['p0', 'p1', 'p2', 'p3', 'p4', 'p5']);
    expect(at(said, 'spur').role).toBe('spur');
    expect(said.causes.map(({ kind }) => kind)).toContain('leads-not-taken-off');
  });

  it('of one place the last day counts, and of one day the lowest, once the contact was remade', () => {
    const job = jobSaying(endsOf(50), ring());
    const bad = loopReading({ loop: 'L-N', from: 'A', linkedAt: 'p2', ohm: 0.6, takenOn: '2026-01-01' });
    const again = job.readings.map((each) => ({ ...each, takenOn: '2026-02-01' }));
    const sameDay = loopReading({ loop: 'L-N', from: 'A', linkedAt: 'p2', ohm: 0.7, takenOn: '2026-02-01' });
    const said = infer({ ...job, readings: [bad, sameDay, ...again] });
    expect(at(said, 'p2').fraction).toBeCloseTo(19 / 50, 3);
  });

  it('leaves out what was read after the work, at the board, or between one conductor', () => {
    const job = jobSaying(endsOf(50), ring());
    const odd = [
      loopReading({ id: 'after-work', loop: 'L-N', from: 'A', linkedAt: 'p2', ohm: 0.9, phase: 'after' }),
      loopReading({ id: 'at-board', loop: 'L-N', from: 'crossed', at: 'board-one', ohm: 0.2 }),
      loopReading({ id: 'one-crossed', loop: 'L', from: 'crossed', at: 'p2', ohm: 0.2 }),
      loopReading({ id: 'pair-through', loop: 'L-N', from: 'end-to-end', ohm: 0.2 }),
    ];
    const said = infer({ ...job, readings: [...job.readings, ...odd] });
    expect(said.taken.leftOut.map(({ reading }) => reading)).toEqual([
      'after-work',
      'at-board',
      'one-crossed',
      'pair-through',
    ]);
    expect(said.legs).toEqual(infer(job).legs);
  });
});

describe('usual causes of a misfit', () => {
  const causesOf = (job: Job): readonly string[] => infer(job).causes.map(({ kind }) => kind);

  it('an open conductor end to end is a broken one, and contradicts the ring', () => {
    const said = infer(jobSaying({ ...endsOf(50), N: 99_999 }, ring()));
    expect(said.causes.map(({ kind }) => kind)).toContain('broken-conductor');
    expect(said.contradictions.map(({ kind }) => kind)).toContain('not-a-ring');
  });

  it('points that one end does not reach lie beyond the break', () => {
    const reached = [0.15, 99_999] as const;
    const unreached = [99_999, 0.15] as const;
    const broken = ring().map(({ id }, i) => ({ id, read: { 'L-N': i < 3 ? reached : unreached } }));
    const open = infer(jobSaying({ L: 99_999 }, broken)).causes.filter(
      ({ kind }) => kind === 'broken-conductor',
    );
    expect(open.map(({ subjects }) => subjects)).toEqual(
      expect.arrayContaining([
        ['p3', 'p4', 'p5'],
        ['p0', 'p1', 'p2'],
      ]),
    );
  });

  it('ends paired instead of crossed read near nought at the board', () => {
    const paired = ring().map(({ id }, i) => {
      const x = ([6, 13, 19, 28, 36, 44][i] ?? 0) / 50;
      return { id, read: { 'L-N': [null, null, x * (1 - x) * 0.741] } as const };
    });
    expect(causesOf(jobSaying(endsOf(50), paired))).toContain('wrong-pairing');
    const crossed = ring().map(({ id }) => ({ id, read: { 'L-N': [null, null, 0.741 / 4] } as const }));
    expect(causesOf(jobSaying(endsOf(50), crossed))).toEqual([]);
  });

  it('a bridge across the ring, and metal beside the protective conductor, read too low', () => {
    const bridged = ring([
      { id: 'low', read: { ...linkedAt(50, 25), 'L-N': [0.01482 * 25 - 0.09, 0.01482 * 25 - 0.09] } },
    ]);
    expect(
      infer(jobSaying(endsOf(50), bridged)).causes.find(({ kind }) => kind === 'interconnected-rings')
        ?.subjects,
    ).toEqual(['low']);
    const earthed = ring([
      { id: 'low', read: { ...linkedAt(50, 25), 'L-cpc': [0.01951 * 25 - 0.12, 0.01951 * 25 - 0.12] } },
    ]);
    expect(
      infer(jobSaying(endsOf(50), earthed)).causes.find(({ kind }) => kind === 'parallel-earth-paths')
        ?.subjects,
    ).toEqual(['low']);
  });

  it('two loops that disagree at a point ask for its contact to be remade', () => {
    const said = infer(
      jobSaying(
        endsOf(50),
        ring([
          { id: 'odd', read: { ...linkedAt(50, 25), 'L-N': [0.01482 * 25 + 0.11, 0.01482 * 25 + 0.11] } },
        ]),
      ),
    );
    expect(said.causes.find(({ kind }) => kind === 'poor-contact')?.subjects).toEqual(['odd']);
    expect(said.next.find(({ kind }) => kind === 'remake-and-read-again')?.points).toEqual(['odd']);
  });

  it('line and neutral apart, and an r2 that fits no cable, are told', () => {
    expect(causesOf(jobSaying({ L: 0.4, N: 0.5, cpc: 0.65 }, ring()))).toContain('line-neutral-differ');
    expect(causesOf(jobSaying({ L: 0.4, N: 0.4, cpc: 0.2 }, []))).toContain('parallel-earth-paths');
    expect(causesOf(jobSaying({ L: 0.4, N: 0.4, cpc: 1.6 }, []))).toContain('other-cpc-size');
  });

  it('another size of protective conductor is read from r2 and held against the drawing', () => {
    const said = infer(jobSaying({ L: 0.3705, N: 0.3705, cpc: 0.905 }, []));
    expect(said.loop.cpc?.areaMm2).toBe(1);
    expect(said.contradictions.map(({ kind }) => kind)).toEqual(['cpc-size']);
  });

  it('neighbours too close to order ask for the second loop', () => {
    const close = [6, 13, 19, 19.2, 28, 40].map((m, i) => ({
      id: `p${i}`,
      read: { 'L-N': linkedAt(50, m)['L-N'] },
    }));
    const { next } = infer(jobSaying(endsOf(50), close));
    expect(next.find(({ kind, loop }) => kind === 'linked' && loop === 'L-cpc')?.points.toSorted()).toEqual([
      'p2',
      'p3',
    ]);
  });
});

describe('laws', () => {
  const drawn = (seed: number): Job => {
    const random = seededRandom(seed);
    const truth = drawCircuit(random, {
      ringPoints: 7,
      legM: [1, 8],
      boardLegM: [2, 8],
      spurs: [0, 2],
      spurM: [1, 6],
      jointShare: 0.05,
    });
    return readCircuit(random, truth, { loops: ['L-N', 'L-cpc'], noise: noises.ordinary });
  };
  const seeds = fc.integer({ min: 1, max: 1e6 });

  it('swapping the ends mirrors the circuit', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const job = drawn(seed);
        const swapped = {
          ...job,
          readings: job.readings.map((each) =>
            each.kind === 'loop' && (each.from === 'A' || each.from === 'B')
              ? { ...each, from: each.from === 'A' ? ('B' as const) : ('A' as const) }
              : each,
          ),
        };
        const [one, other] = [infer(job), infer(swapped)];
        expect(other.order.points).toEqual(one.order.points.toReversed());
        expect(other.order.confidence).toBeCloseTo(one.order.confidence, 2);
        for (const { point, fraction, spurConfidence } of one.points) {
          expect(at(other, point).fraction).toBeCloseTo(1 - (fraction ?? 0), 9);
          expect(at(other, point).spurConfidence).toBeCloseTo(spurConfidence ?? 0, 9);
        }
      }),
      { seed: 20261125, numRuns: 40 },
    );
  });

  it('the order in which readings, points and circuits are listed means nothing', () => {
    fc.assert(
      fc.property(seeds, fc.func(fc.integer()), (seed, key) => {
        const job = drawn(seed);
        const mixed = {
          ...job,
          readings: job.readings.toSorted((a, b) => key(a.id) - key(b.id)),
          points: job.points.toReversed(),
        };
        expect(infer(mixed)).toEqual(infer(job));
      }),
      { seed: 20261125, numRuns: 30 },
    );
  });

  it('legs add up to the loop, in shares and in millimetres, and none is negative', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { legs, loop } = infer(drawn(seed));
        expect(legs.reduce((sum, { fraction }) => sum + fraction, 0)).toBeCloseTo(1, 9);
        expect(legs.reduce((sum, { lengthMm }) => sum + (lengthMm ?? 0), 0)).toBeCloseTo(
          loop.lengthMm ?? 0,
          6,
        );
        expect(legs.every(({ fraction }) => fraction >= 0)).toBe(true);
      }),
      { seed: 20261125, numRuns: 40 },
    );
  });

  it('every confidence lies between nought and one, and a spur’s parents share at most one', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const said = infer(drawn(seed));
        const statements = [said.order, ...said.points, ...said.legs, ...said.contradictions];
        expect(statements.every(({ confidence }) => confidence >= 0 && confidence <= 1)).toBe(true);
        for (const { parents } of said.points)
          expect(parents.reduce((sum, { confidence }) => sum + confidence, 0)).toBeLessThanOrEqual(1 + 1e-9);
      }),
      { seed: 20261125, numRuns: 40 },
    );
  });

  it('a ring twice as long with the same shares reads the same shares', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 60 }), (loopM) => {
        const points = [0.1, 0.3, 0.45, 0.7, 0.9].map((share, i) => ({ id: `p${i}`, share }));
        const said = (m: number): InferredCircuit =>
          infer(
            jobSaying(
              endsOf(m),
              points.map(({ id, share }) => ({ id, read: linkedAt(m, share * m) })),
            ),
          );
        const [one, twice] = [said(loopM), said(2 * loopM)];
        for (const { id, share } of points) {
          expect(at(one, id).fraction).toBeCloseTo(share, 9);
          expect(at(twice, id).fraction).toBeCloseTo(share, 9);
          expect(at(twice, id).alongMm).toBeCloseTo(2 * (at(one, id).alongMm ?? 0), 3);
        }
      }),
      { seed: 20261125, numRuns: 20 },
    );
  });

  it('thirty points are inferred well within 20 ms', () => {
    const random = seededRandom(5);
    const truth = drawCircuit(random, {
      ringPoints: 26,
      legM: [1, 6],
      boardLegM: [2, 8],
      spurs: [4, 4],
      spurM: [1, 6],
      jointShare: 0,
    });
    const job = readCircuit(random, truth, { loops: ['L-N', 'L-cpc'], noise: noises.ordinary });
    const times = Array.from({ length: 31 }, () => {
      const { user } = process.cpuUsage();
      infer(job);
      return (process.cpuUsage().user - user) / 1000;
    }).toSorted((a, b) => a - b);
    expect(times[15]).toBeLessThan(20);
  });
});
