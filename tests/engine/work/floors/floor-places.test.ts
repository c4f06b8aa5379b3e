import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Worked } from '#engine/connections/worked.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { floorPlaces } from '#engine/work/floors/floor-places.ts';
import { tapeAt } from '#engine/work/floors/tape.ts';
import { edited } from '../../circuit/any-edited-job.ts';
import { demoEstimate, demoJob, demoNames } from '../../demo-jobs/demo-estimates.ts';
import { firstWorked } from '../worked-schemes.ts';

const workOf = (worked: Worked) => floorPlaces(worked);

describe.each(
  demoNames.flatMap((name) => demoEstimate(name).schemes.map((scheme) => [name, scheme] as const)),
)('the floors of %s', (_, scheme) => {
  const work = workOf(scheme.worked);
  const counted = (...tasks: readonly string[]): number =>
    scheme.labour.filter(({ task }) => tasks.includes(task)).reduce((sum, { quantity }) => sum + quantity, 0);

  it('have as many joists and boards in their lists as labour counts', () => {
    const judged = (which: string) => work.joists.filter(({ hole }) => hole.judged === which).length;
    expect(judged('hole') + judged('unknown')).toBe(counted('drill-joist'));
    expect([judged('notch'), judged('neither')]).toEqual([counted('notch-joist'), counted('barred-joist')]);
    for (const opening of ['lift-board', 'chipboard-trap', 'open-fixed-floor'] as const)
      expect(work.boards.filter((board) => board.opening === opening)).toHaveLength(counted(opening));
  });

  it('name each once, by a mark that nothing else in the job has', () => {
    const marks = [...work.joists, ...work.boards].map(({ mark }) => mark);
    const labels = [...scheme.worked.job.points, ...scheme.worked.job.boards].map(({ label }) => label);
    expect(new Set([...marks, ...labels]).size).toBe(marks.length + new Set(labels).size);
    for (const { cables } of [...work.joists, ...work.boards]) expect(cables).not.toEqual([]);
  });
});

describe('the lists of joists and boards of any job', () => {
  it('leave nothing out and never measure beyond a room', () => {
    fc.assert(
      fc.property(edited, (job) => {
        const worked = firstWorked(job);
        const { joists, boards } = workOf(worked);
        for (const { tape } of [...joists, ...boards])
          for (const side of tape === null ? [] : [tape.across, tape.up])
            expect(side.lengthMm).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 50 },
    );
  });
});

describe('a place in a room, as a tape finds it', () => {
  const { plan } = firstWorked(demoJob('saltglass-row'));
  const room = [...plan.roomById.values()].find(({ room: { name } }) => name === 'Bedroom 1');
  if (room === undefined) throw new Error('no bedroom');
  const xs = room.outline.map(([x]) => x);
  const ys = room.outline.map(([, y]) => y);
  const [left, right, foot, top] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];

  it('is measured from the nearer side on both hands: in a rectangle, by its corners', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.double({ min: 0.01, max: 0.2, noNaN: true }),
        (along, up) => {
          // Below the chimney breast the room is a rectangle.
          const [x, y] = [left + (right - left) * along, foot + (top - foot) * up];
          const tape = tapeAt(plan, room.storeyId, planPoint(x, y));
          const [toLeft, toRight] = [x - left, right - x];
          expect(tape?.across.lengthMm).toBeCloseTo(Math.min(toLeft, toRight), 6);
          if (Math.abs(toLeft - toRight) > 1)
            expect(tape?.across.side).toBe(toLeft < toRight ? 'left' : 'right');
          expect(tape?.up).toEqual({ side: 'foot', lengthMm: expect.closeTo(y - foot, 6) });
          expect(tape?.roomName).toBe('Bedroom 1');
        },
      ),
      { numRuns: 100 },
    );
  });

  it('is nowhere outside all rooms', () => {
    expect(tapeAt(plan, room.storeyId, planPoint(-5000, -5000))).toBeNull();
  });
});

describe('what a joist bears', () => {
  it('is a hole of a quarter of its depth and a notch of an eighth', () => {
    // Source: Approved Document A; BS 5268-2: 0.25 and 0.125 of the depth (see data/standards/joist-cuts.ts).
    const { joists } = workOf(
      demoEstimate('saltglass-row').schemes[0]?.worked ?? firstWorked(demoJob('saltglass-row')),
    );
    const [first] = joists;
    const depthMm = first?.hole.joistDepthMm ?? 0;
    expect(first).toMatchObject({
      largestHoleMm: Math.floor(depthMm / 4),
      deepestNotchMm: Math.floor(depthMm / 8),
      bitMm: 16,
    });
  });

  it('is not told where its depth is not known', () => {
    const quoting = demoEstimate('saltglass-row-quoting').schemes[0];
    if (quoting === undefined) throw new Error('no scheme');
    for (const joist of workOf(quoting.worked).joists)
      expect([joist.largestHoleMm, joist.deepestNotchMm]).toEqual([null, null]);
  });
});
