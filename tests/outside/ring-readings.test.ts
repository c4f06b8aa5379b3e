import { describe, expect, it } from 'vitest';
import { crossedOhm } from '#engine/proof/expected-readings.ts';
import { inferCircuit } from '#engine/proof/readings/infer-circuit.ts';
import { endsOf, jobSaying, linkedAt } from '../engine/proof/readings/reading-jobs.ts';

/** A crossed reading of line and protective conductor at a place on the ring. */
const crossedAt = (fraction: number, r1Ohm: number, r2Ohm: number): number =>
  crossedOhm(fraction * r1Ohm, r1Ohm, fraction * r2Ohm, r2Ohm);

describe('published readings of rings', () => {
  it('r1 0.54 and r2 0.90 Ω read 0.36 Ω crossed in the middle and 0.3375 Ω at the board', () => {
    // https://www.diynot.com/diy/threads/calculating-r1-r2.79317/
    expect(crossedAt(0.5, 0.54, 0.9)).toBeCloseTo(0.36, 9);
    expect(crossedAt(0, 0.54, 0.9)).toBeCloseTo(0.3375, 9);
  });

  it('r1 1.15 Ω is a ring of 151 to 155 m', () => {
    // https://electriciansforums.net/threads/working-out-the-length-of-a-ring-finals-circuit.212811/post-1861540
    const { loop } = inferCircuit(jobSaying({ L: 1.15, N: 1.15, cpc: 1.8 }, []), 'ring-one');
    const lengthM = (loop.lengthMm ?? 0) / 1000;
    expect(lengthM).toBeGreaterThan(151);
    expect(lengthM).toBeLessThan(155.5);
    expect(loop.cpc?.areaMm2).toBe(1.5);
    expect(crossedAt(0.5, 1.15, 1.8)).toBeCloseTo(0.7375, 9);
  });

  it('r1 1.09 Ω is a ring of 147 m, and reads 0.7275 Ω crossed in the middle', () => {
    // https://community.screwfix.com/threads/using-a-temporarily-long-ring-and-high-zs.245934/
    const { loop } = inferCircuit(jobSaying({ L: 1.09, N: 1.09, cpc: 1.82 }, []), 'ring-one');
    expect((loop.lengthMm ?? 0) / 1000).toBeCloseTo(147, 0);
    expect(crossedAt(0.5, 1.09, 1.82)).toBeCloseTo(0.7275, 9);
  });

  it.each([
    // Spread of the crossed reading round the ring, in per cent of its greatest:
    // https://electriciansforums.net/threads/r1-r2-4-the-myth-expelled.176045/page-3
    [7.41, 12.1, 6],
    [4.61, 12.1, 20],
    [7.41, 18.1, 18],
  ])('%d and %d mΩ/m: crossed, the board reads about %d %% less than the middle', (line, cpc, percent) => {
    const spread = 100 * (1 - crossedAt(0, line, cpc) / crossedAt(0.5, line, cpc));
    expect(Math.abs(spread - percent)).toBeLessThan(0.5);
  });

  it('r2 is 1.67 times r1 for 2.5/1.5 mm² by area, and 2.67 for 4/1.5: both are read as such', () => {
    // https://www.voltimum.co.uk/articles/end-end-resistance-values-ring-final
    const { loop } = inferCircuit(jobSaying({ L: 0.5, N: 0.5, cpc: 0.835 }, []), 'ring-one');
    expect(loop.cpc?.areaMm2).toBe(1.5);
    const four = jobSaying({ L: 0.5, N: 0.5, cpc: 1.335 }, []);
    const legs = four.legs.map((leg) => ({
      ...leg,
      cable: { type: 'flat-twin', lineMm2: 4, cpcMm2: 1.5 } as const,
    }));
    expect(inferCircuit({ ...four, legs }, 'ring-one').loop.cpc?.areaMm2).toBe(1.5);
  });

  it('crossed line and neutral read a quarter of r1 + rn at every point of the ring, and more at a spur', () => {
    // https://www.electriciansforums.net/threads/need-some-help-with-ring-final-circuit-please.36788
    // and https://electriciansforums.net/threads/ring-test.16502
    const points = [0.1, 0.3, 0.5, 0.8].map((x, i) => ({
      id: `p${i}`,
      read: { 'L-N': [null, null, crossedAt(x, 0.5, 0.5)] } as const,
    }));
    expect(points.map(({ read }) => read['L-N'][2])).toEqual(
      [0.25, 0.25, 0.25, 0.25].map((ohm) => expect.closeTo(ohm, 9)),
    );
    const spur = { id: 'spur', read: { 'L-N': [null, null, 0.25 + 0.01482 * 6] } as const };
    const inferred = inferCircuit(jobSaying({ L: 0.5, N: 0.5 }, [...points, spur]), 'ring-one');
    expect(inferred.points.filter(({ role }) => role === 'spur').map(({ point }) => point)).toEqual(['spur']);
    expect(inferred.order.answer).toBe('cannot-say');
  });

  it('linked readings from both ends add up to the loop on the ring, to more by twice the spur', () => {
    // Circuit theory: two series resistances of IEC 60228 copper, 7.41 and 12.1 mΩ/m.
    const points = [
      { id: 'p0', read: linkedAt(60, 12) },
      { id: 'p1', read: linkedAt(60, 25) },
      { id: 'p2', read: linkedAt(60, 44) },
      { id: 'spur', read: linkedAt(60, 25, 6) },
    ];
    const inferred = inferCircuit(jobSaying(endsOf(60), points), 'ring-one');
    const spur = inferred.points.find(({ point }) => point === 'spur');
    expect(spur?.alongMm).toBeCloseTo(25_000, 0);
    expect(Math.abs((spur?.spurMm ?? 0) - 6_000)).toBeLessThan(400);
    expect(spur?.parents[0]?.point).toBe('p1');
  });
});
