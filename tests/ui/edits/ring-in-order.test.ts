import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { End } from '#model/cable.ts';
import type { Job } from '#model/job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { setPointsInOrder } from '../../../ui/edits/ring-in-order.ts';
import { edited, faultsOf } from './random-edits.ts';

const job = demoJob('saltglass-row');
const circuit = { id: 'ring-house', name: 'the ring' };
const ring = job.points.filter(({ asFound }) => asFound?.role === 'ring').map(({ id }) => id);
const spur = job.points.filter(({ asFound }) => asFound?.role === 'spur').map(({ id }) => id);

const ordered = (from: Job, was: readonly string[], now: readonly string[], isRing = true): Job => {
  const legIds = [...now, 'back'].map((_, index) => `new-${index}`);
  return edited(from, setPointsInOrder(circuit, { was, now, isRing, cable: null, legIds }));
};

const endWords = (end: End): string => ('point' in end ? end.point : `board ${end.end ?? ''}`.trim());
/** The stretches of the legs between these points and the board, whichever way each leg was recorded. */
const stretches = (of: Job, points: readonly string[]): readonly string[] =>
  of.legs
    .filter(({ from, to }) => [from, to].every((end) => !('point' in end) || points.includes(end.point)))
    .map(({ from, to }) => [endWords(from), endWords(to)].sort().join(' – '))
    .sort();
const asked = (now: readonly string[], isRing: boolean): readonly string[] => {
  const ends = [isRing ? 'board A' : 'board', ...now, ...(isRing && now.length > 0 ? ['board B'] : [])];
  return ends
    .slice(1)
    .map((end, index) => [ends[index], end].sort().join(' – '))
    .sort();
};

describe('the points of a circuit in order', () => {
  it('changes nothing where the legs lie in that order already', () => {
    expect(ordered(job, ring, ring)).toEqual(job);
  });

  it('keeps every leg when the ring is told from its other end, and names its ends anew', () => {
    const after = ordered(job, ring, ring.toReversed());
    const lengthOf = (of: Job): readonly unknown[] => of.legs.map(({ id, lengthMm }) => [id, lengthMm]);
    expect(lengthOf(after)).toEqual(lengthOf(job));
    expect(stretches(after, ring)).toEqual(asked(ring.toReversed(), true));
  });

  it('leaves spurs off the ring alone', () => {
    const ofSpur = (of: Job) =>
      of.legs.filter(({ from, to }) => JSON.stringify([from, to]).includes(String(spur[0])));
    const after = ordered(job, ring, ring.toReversed().slice(2));
    expect(ofSpur(job).length).toBeGreaterThan(0);
    expect(ofSpur(after)).toEqual(ofSpur(job));
  });

  it('tells the two legs of a ring of one point apart', () => {
    const one = ring.slice(0, 1);
    const after = ordered(ordered(job, ring, one), one, one);
    expect(stretches(after, ring)).toEqual(asked(one, true));
    expect(after).toEqual(ordered(job, ring, one));
  });

  it('gives new legs the cable that it is told', () => {
    const cable = { type: 'flat-twin', lineMm2: 4, cpcMm2: 1.5 } as const;
    const now = ['r1-hallway', 'r3-living2'];
    const after = edited(
      job,
      setPointsInOrder(circuit, { was: ring, now, isRing: true, cable, legIds: ['n0', 'n1', 'n2'] }),
    );
    expect(after.legs.filter(({ id }) => id.startsWith('n')).map((leg) => leg.cable)).toEqual([cable, cable]);
  });

  it('lays exactly the stretches of any order, keeps what lies there, and leaves a readable job', () => {
    const orders = fc.tuple(fc.shuffledSubarray([...ring, ...spur]), fc.boolean());
    fc.assert(
      fc.property(orders, ([now, isRing]) => {
        const after = ordered(job, ring, now, isRing);
        expect(faultsOf(after)).toEqual([]);
        expect(stretches(after, [...ring, ...now])).toEqual(asked(now, isRing));
        const known = new Map(job.legs.map((leg) => [leg.id, leg]));
        for (const leg of after.legs) {
          const before = known.get(leg.id);
          if (before !== undefined) expect({ ...leg, from: 0, to: 0 }).toEqual({ ...before, from: 0, to: 0 });
        }
        const neighbours = new Set(asked(now, true).map((stretch) => stretch.replace(/ [AB]\b/, '')));
        const stay = stretches(job, [...ring, ...now]).filter(
          (stretch) => neighbours.has(stretch) && !stretch.includes('board'),
        );
        expect(after.legs.filter(({ id }) => known.has(id)).length).toBeGreaterThanOrEqual(stay.length);
      }),
      { numRuns: 200 },
    );
  });
});
