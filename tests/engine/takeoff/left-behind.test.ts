import { describe, expect, it } from 'vitest';
import { feltInRooms } from '#engine/quotation/felt.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { demoJob, estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

const job = demoJob('saltglass-row');
const asTold = schemeOf(estimateOf(job), 'spurs-rcbo');

const pointCalled = (label: string): Point => {
  const point = job.points.find((each) => each.label === label);
  if (point === undefined) throw new Error(`No point ${label}.`);
  return point;
};

/** The job with an outlet of the ring moved along its wall. */
function withMoved(byMm: number): Job {
  const old = pointCalled('R8');
  if (old.place === undefined || !('wall' in old.place)) throw new Error('R8 is not on a wall.');
  const { asFound: _, certainty: __, ...same } = old;
  const place = { ...old.place, alongMm: old.place.alongMm + byMm };
  const next: Point = { ...same, id: 'n8', label: 'N8', status: 'wanted', replaces: old.id, place };
  const points = job.points.map((point) =>
    point.id === old.id ? { ...point, status: 'replaced' as const } : point,
  );
  return { ...job, points: [...points, next] };
}

/** The job with a point taken out. */
const without = (label: string): Job => ({
  ...job,
  points: job.points.map((point) =>
    point.label === label ? { ...point, status: 'removed' as const } : point,
  ),
});

const estimated = (changed: Job): SchemeEstimate => schemeOf(estimateOf(changed), 'spurs-rcbo');
const more = (changed: SchemeEstimate, item: string): number =>
  (changed.takeoff.find((line) => line.item === item)?.measured ?? 0) -
  (asTold.takeoff.find((line) => line.item === item)?.measured ?? 0);
const moreWork = (changed: SchemeEstimate, task: string): number =>
  (changed.labour.find((each) => each.task === task)?.quantity ?? 0) -
  (asTold.labour.find((each) => each.task === task)?.quantity ?? 0);

describe('what a moved point leaves behind', () => {
  const moved = estimated(withMoved(800));

  it('are both its cables, each joined in the old box to a new one that leads on', () => {
    // Along the wall, an end of 200 mm at either box, 300 mm of slack: twice; and W3’s spur is 0.4 m longer from there.
    expect(more(moved, 'cable-flat-2.5-1.5')).toBeCloseTo(2 * (0.8 + 0.2 + 0.2 + 0.3) + 0.4, 9);
    // Line, neutral and protective conductor of each cable.
    expect(more(moved, 'lever-2')).toBe(6);
    expect(
      moved.worked.things.joints.filter(({ lies }) => lies === 'box').map(({ cables }) => cables),
    ).toEqual([2, 2]);
  });

  it('is its box behind a blank plate, while the new one gets a box of its own', () => {
    expect(more(moved, 'blank-plate-twin')).toBe(1);
    expect(moved.worked.things.boxes.find(({ id }) => id === 'n8')).toMatchObject({
      action: 'fit',
      state: 'new',
    });
    expect([moreWork(moved, 'fit-blank'), moreWork(moved, 'remove-accessory')]).toEqual([1, 1]);
    expect(moved.worked.things.terminals.find(({ nodeId }) => nodeId === 'n8')).toMatchObject({
      cables: 3,
      newCables: 3,
    });
  });

  it('keeps the ring whole: no rule fails that did not', () => {
    const failed = ({ findings }: SchemeEstimate) =>
      findings.filter(({ outcome }) => outcome === 'fails').map(({ rule }) => rule);
    expect(failed(moved)).toEqual(failed(asTold));
  });

  it('is nothing where the next one takes the same box', () => {
    const same = estimated(withMoved(40));
    expect(more(same, 'blank-plate-twin')).toBe(0);
    expect(same.worked.things.joints.some(({ lies }) => lies === 'box')).toBe(false);
    expect(same.worked.things.boxes.find(({ id }) => id === 'n8')).toMatchObject({ state: 'found' });
  });
});

describe('what a point that is taken out leaves behind', () => {
  it('is a blank plate over the joint of the ring', () => {
    const removed = estimated(without('R6'));
    expect(more(removed, 'blank-plate-twin') + more(removed, 'blank-plate-single')).toBe(1);
    expect(moreWork(removed, 'fit-blank')).toBe(1);
    // The ring’s two and the one of the spur that hangs on it.
    expect(removed.worked.things.joints.find(({ lies }) => lies === 'box')).toMatchObject({ cables: 3 });
  });

  it('is a blank plate over an empty box at the end of a spur', () => {
    const removed = estimated(without('S1'));
    expect(more(removed, 'blank-plate-twin') + more(removed, 'blank-plate-single')).toBe(1);
    expect(moreWork(removed, 'fit-blank')).toBe(1);
    expect(removed.worked.things.joints.some(({ lies }) => lies === 'box')).toBe(false);
  });

  it('is the spur’s cable, taken off at R9 and closed off at both ends', () => {
    const removed = estimated(without('S1'));
    const [s1, r9] = [pointCalled('S1').id, pointCalled('R9').id];
    expect(more(removed, 'connector-block')).toBe(2);
    expect(removed.labour.find(({ task }) => task === 'disconnect-cable')).toMatchObject({
      quantity: 1,
      causes: [r9, s1].toSorted(),
    });
    expect(removed.takeoff.find(({ item }) => item === 'connector-block')?.causes).toEqual(
      [r9, s1].toSorted(),
    );
    // A ring that is joined in R6's box goes on: nothing is disconnected.
    expect(moreWork(estimated(without('R6')), 'disconnect-cable')).toBe(0);
    expect(more(estimated(without('R6')), 'connector-block')).toBe(0);
  });

  it('is disconnected somewhere, too, where no leg is known and the survey says that a spur ends there', () => {
    const { legs: _, ...rest } = without('S1');
    const removed = estimated({ ...rest, legs: [], readings: [] });
    expect(moreWork(removed, 'disconnect-cable')).toBe(1);
    expect(more(removed, 'connector-block')).toBe(2);
  });

  it('is told to the customer where it is felt: at the point and at the one that fed it', () => {
    const words = (changed: SchemeEstimate) =>
      feltInRooms(changed.worked).flatMap((room) => room.words.map((word) => `${room.room}: ${word}`));
    const ofSpur = words(estimated(without('S1')));
    expect(
      ofSpur.filter((line) => /S1|R9/.test(line)).map((line) => line.slice(line.indexOf(': ') + 2)),
    ).toEqual([
      'S1: taken out, and a blank plate put over its box',
      'R9: opened, the cable to S1 taken off, and closed again',
    ]);
    expect(
      words(estimated(without('R6'))).some((line) =>
        line.endsWith('R6: taken out, its cables joined in its box, and a blank plate put over its box'),
      ),
    ).toBe(true);
    expect(words(asTold).some((line) => line.includes('taken out'))).toBe(false);
  });
});
