import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { plainRoute } from '#engine/ways/find-run.ts';
import { foundRuns } from '#engine/ways/found-runs.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import { positionInLeg } from '#engine/ways/position-in-leg.ts';
import type { Run } from '#engine/ways/run.ts';
import type { Leg } from '#model/installation.ts';
import { point } from '#tests/engine/plan/small-house.ts';
import { tariff, terrace, terracePlaces } from './demo-houses.ts';
import { legCable, networkOf, node } from './small-network.ts';

const allowances = defaultLengthAllowances;
const board = {
  id: 'cu',
  label: 'CU',
  place: { wall: 's', side: 'left', alongMm: 700, heightMm: 1900 },
  rcds: [],
} as const;
const plan = buildPlan({
  storeys: terrace().storeys.map(({ storey }) => storey),
  points: [...Object.entries(terracePlaces).map(([id, place]) => point(id, place)), point('lost')],
  boards: [{ ...board, rcds: [] }],
});
const circuits = [
  { id: 'ring', name: 'ring', board: { ...board, rcds: [] }, device: null, circuit: null, isNew: false },
];
const origin = node('ring', { kind: 'origin', pointId: null, circuitId: 'ring' });

function found(leg: Partial<Leg>, [from, to]: readonly [string, string] = ['R8', 'R9']): Run {
  const nodes = [origin, node('R8'), node('R9'), node('lost')];
  const runs = foundRuns({
    plan,
    network: networkOf(nodes, [legCable('leg', from, to)], { circuits }),
    legs: [{ id: 'leg', circuit: 'ring', from: { point: from }, to: { point: to }, ...leg }],
    tariff,
    allowances,
    findRun: plainRoute,
  });
  const run = runs.get('leg');
  if (run === undefined) throw new Error('the leg has no run');
  return run;
}

/** The way that the leg between the bedrooms really goes: out into the room and back to the wall. */
const via: NonNullable<Leg['via']> = [
  { storey: 'ff', at: [4200, 5000], heightMm: -110 },
  { storey: 'ff', at: [2900, 5000], heightMm: -110 },
  { storey: 'ff', at: [2900, 900], heightMm: -110 },
];

describe('foundRuns', () => {
  it('guesses the path of a leg without waypoints, and says that it is assumed throughout', () => {
    const run = found({});
    expect(run).toMatchObject({ legId: 'leg', circuitIds: ['ring'], pinned: false });
    expect(new Set(run.segments.map(({ certainty }) => certainty))).toEqual(new Set(['assumed']));
    expect(run.routeMm).toBeCloseTo(410 + 4100 + 410, 6);
    expect(run.lengthMm).toBeCloseTo(4920 + 400 + 300, 6);
    expect(run.highMm).toBeCloseTo(5620 + 4920 * 0.3, 6);
  });

  it('guesses the path that a measured length fits best', () => {
    // By the loft: aside to the corner of the room and up in its zone, against 410 under the floor.
    const byLoft = found({ lengthMm: 9100 });
    expect(byLoft.segments.map(({ medium }) => medium)).toContain('loft');
    expect(Math.abs(byLoft.routeMm - 8700)).toBeLessThan(500);
    expect(found({ lengthMm: 5300 }).routeMm).toBeCloseTo(4920, 6);
  });

  it('keeps to the waypoints surveyed, and to the length measured', () => {
    const run = found({ via, lengthMm: 7900 });
    expect(run.routeMm).toBeCloseTo(410 + 1300 + 4100 + 1300 + 410, 6);
    expect(run).toMatchObject({ pinned: true, lengthMm: 7900, lowMm: 7900, highMm: 7900, slackMm: 0 });
    expect(run.segments[1]?.certainty).toBe('pinned');
  });

  it('takes a route or a length at its word when the survey only assumes it', () => {
    const run = found({ via, lengthMm: 7900, certainty: { route: 'assumed', length: 'assumed' } });
    expect(new Set(run.segments.map(({ certainty }) => certainty))).toEqual(new Set(['assumed']));
    expect([run.lowMm, run.highMm]).toEqual([7900 * 0.7, 7900 * 1.3]);
  });

  it('starts at the board where the leg starts at the origin', () => {
    const run = found({}, ['ring', 'R9']);
    expect(run.from).toMatchObject({ kind: 'board', nodeId: 'ring', pointId: null });
    expect(run.from.position?.at).toEqual([600, 0]);
    expect(run.endsMm).toBe(950);
  });

  it('has no path where an end has no place, but keeps a measured length', () => {
    expect(found({}, ['R8', 'lost'])).toMatchObject({ segments: [], lengthMm: null });
    expect(found({ lengthMm: 5000 }, ['R8', 'lost'])).toMatchObject({ segments: [], lengthMm: 5000 });
  });
});

describe('positionInLeg', () => {
  it('finds 6.0 m from the one bedroom’s outlet under the floor of the other', () => {
    const position = positionInLeg(found({ via, lengthMm: 7900 }), 6000, allowances);
    expect(position?.levelMm).toBe(2615);
    // 5.8 m past the tail; the path is 7.52 m for 7.5 m of cable, so 5.8155 m along it: 5.5 mm round the corner.
    expect(position?.at[0]).toBeCloseTo(2900 + 5.47, 1);
    expect(position?.at[1]).toBeCloseTo(900, 6);
    expect(position?.storeyId).toBe('ff');
  });

  it('is at the ends within the tails and beyond them', () => {
    const run = found({ via, lengthMm: 7900 });
    for (const alongMm of [-50, 0, 200])
      expect(positionInLeg(run, alongMm, allowances)?.at).toEqual(run.from.position?.at);
    for (const alongMm of [7701, 7900, 9999])
      expect(positionInLeg(run, alongMm, allowances)?.at).toEqual(run.to.position?.at);
  });

  it('is on the wall while the cable is in it', () => {
    const position = positionInLeg(found({ lengthMm: 5320 }), 350, allowances);
    expect(position?.onWall).toMatchObject({ wallId: 'e2', side: 'left' });
    expect(position?.heightMm).toBeCloseTo(150, 6);
  });

  it('never goes further through the building than the cable is long', () => {
    const run = found({ via, lengthMm: 7900 });
    const spots = fc.integer({ min: 0, max: 7900 });
    fc.assert(
      fc.property(spots, spots, (a, b) => {
        const [p, q] = [positionInLeg(run, a, allowances), positionInLeg(run, b, allowances)];
        if (p === null || q === null) throw new Error('no position');
        const apartMm = Math.hypot(p.at[0] - q.at[0], p.at[1] - q.at[1], p.levelMm - q.levelMm);
        expect(apartMm).toBeLessThanOrEqual((Math.abs(a - b) * 7520) / 7500 + 1e-6);
      }),
    );
  });

  it('spreads a cable measured shorter than its tails over the whole path', () => {
    const run = found({ lengthMm: 300 });
    expect(positionInLeg(run, 0, allowances)?.at).toEqual(run.from.position?.at);
    expect(positionInLeg(run, 150, allowances)?.at[1]).toBeCloseTo(2950, 6);
  });

  it('is nowhere in a leg without a path', () => {
    expect(positionInLeg(found({}, ['lost', 'R8']), 100, allowances)).toBeNull();
  });
});
