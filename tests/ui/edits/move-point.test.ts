import fc from 'fast-check';
import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { readJob } from '#model/read-job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { movePoint } from '../../../ui/edits/move-point.ts';

const job = demoJob('saltglass-row');
const walls = job.storeys.flatMap((storey) => storey.walls.map(({ id }) => id));

describe('moving a point', () => {
  it('is named after the point, and groups the moves of one drag', () => {
    const point = job.points.find(({ label }) => label === 'W1');
    const place = { wall: walls[0] ?? '', side: 'left', alongMm: 0, heightMm: 0 } as const;
    const move = movePoint(job, { pointId: point?.id ?? '', place, drag: 3, moving: true });
    expect(move).toMatchObject({ label: 'Move W1', moving: true });
    expect(move.group).toBe(
      movePoint(job, { pointId: point?.id ?? '', place, drag: 3, moving: false }).group,
    );
    expect(move.group).not.toBe(
      movePoint(job, { pointId: point?.id ?? '', place, drag: 4, moving: true }).group,
    );
  });

  it('keeps the height of the point and a readable job, wherever it goes', () => {
    const move = fc.record({
      pointId: fc.constantFrom(...job.points.map(({ id }) => id)),
      wall: fc.constantFrom(...walls),
      side: fc.constantFrom('left' as const, 'right' as const),
      alongMm: fc.double({ min: 0, max: 9000, noNaN: true }),
    });
    fc.assert(
      fc.property(move, ({ pointId, ...on }) => {
        const place = { ...on, heightMm: 77 };
        const { change } = movePoint(job, { pointId, place, drag: 1, moving: false });
        const after = produce(job, (draft) => change(draft));
        const before = job.points.find(({ id }) => id === pointId)?.place;
        const now = after.points.find(({ id }) => id === pointId)?.place;
        expect(now).toEqual({ ...place, heightMm: before?.heightMm ?? 77 });
        expect(readJob(after).ok).toBe(true);
      }),
      { numRuns: 40 },
    );
  });

  it('changes nothing when the point is gone', () => {
    const place = { wall: walls[0] ?? '', side: 'left', alongMm: 0, heightMm: 0 } as const;
    const { change, label } = movePoint(job, { pointId: 'gone', place, drag: 1, moving: false });
    expect(label).toBe('Move a point');
    expect(produce(job, (draft) => change(draft))).toBe(job);
  });
});
