import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { readJob } from '#model/read-job.ts';
import { demoEstimate, demoJob, demoNames, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { forgetLegWay, legWays, setLegWay } from '../../../ui/edits/leg-ways.ts';

describe('the ways that a leg may be taken to run', () => {
  it.each(demoNames)('either have waypoints or a reason, and lead from end to end, in %s', (name) => {
    const { worked } = demoEstimate(name).asFound;
    for (const { id } of worked.job.legs)
      for (const { via, whyNot } of legWays(worked, id)) {
        expect(via === null).toBe(whyNot !== null);
        if (via === null) continue;
        const run = worked.foundRuns.get(id);
        const [first, last] = [via[0], via.at(-1)];
        const away = (at: readonly number[] | undefined, to: readonly number[] | undefined): number =>
          Math.hypot((at?.[0] ?? 0) - (to?.[0] ?? 0), (at?.[1] ?? 0) - (to?.[1] ?? 0));
        expect(away(first?.at, run?.from.position?.at)).toBeLessThan(2);
        expect(away(last?.at, run?.to.position?.at)).toBeLessThan(2);
      }
  });

  it('are written down as seen or assumed, and then run where they are said to', () => {
    const job = demoJob('saltglass-row');
    const { worked } = demoEstimate('saltglass-row').asFound;
    const floor = legWays(worked, 'leg-r03r04').find(({ key }) => key === 'floor');
    const via = floor?.via ?? [];
    expect(via.length).toBeGreaterThan(1);
    for (const certainty of ['seen', 'assumed'] as const) {
      const { change } = setLegWay('leg-r03r04', 'Leg R3–R4', { via, certainty });
      const changed = produce(job, (draft) => change(draft));
      expect(readJob(changed)).toMatchObject({ ok: true });
      const segments = estimateOf(changed).asFound.worked.foundRuns.get('leg-r03r04')?.segments ?? [];
      expect(segments.some(({ certainty: how }) => how === 'assumed')).toBe(certainty === 'assumed');
      expect(segments.some(({ medium }) => medium.startsWith('void'))).toBe(true);
    }
  });

  it('are forgotten again: the likeliest way is found as before', () => {
    const job = demoJob('saltglass-row');
    const { worked } = demoEstimate('saltglass-row').asFound;
    const via = legWays(worked, 'leg-r03r04').find(({ key }) => key === 'floor')?.via ?? [];
    const told = produce(job, (draft) =>
      setLegWay('leg-r03r04', 'it', { via, certainty: 'assumed' }).change(draft),
    );
    const forgotten = produce(told, (draft) => forgetLegWay('leg-r03r04', 'it').change(draft));
    expect(readJob(forgotten)).toMatchObject({ ok: true });
    const run = estimateOf(forgotten).asFound.worked.foundRuns.get('leg-r03r04');
    expect(run?.pinned).toBe(false);
    expect(run?.steps).toEqual(worked.foundRuns.get('leg-r03r04')?.steps);
  });

  it('of a leg whose ends are on the walls of one room go round its corners', () => {
    const { worked } = demoEstimate('saltglass-row').asFound;
    const ways = worked.job.legs.flatMap(({ id }) =>
      legWays(worked, id).filter(({ key }) => key === 'walls'),
    );
    const told = ways.flatMap(({ via }) => (via === null ? [] : [via]));
    expect(told.length).toBeGreaterThan(0);
    // Each stretch is along a wall: square to the house, which this one is.
    for (const via of told)
      for (const [i, to] of via.entries()) {
        const from = via[i - 1];
        if (from === undefined) continue;
        const [x, y] = [Math.abs(to.at[0] - from.at[0]), Math.abs(to.at[1] - from.at[1])];
        expect(Math.min(x, y)).toBeLessThan(120);
      }
  });

  it('along the walls lie in the walls, and go through no door, window or breast', () => {
    const reasons = new Set<string>();
    let told = 0;
    for (const name of demoNames) {
      const { worked } = demoEstimate(name).asFound;
      for (const { id } of worked.job.legs) {
        const walls = legWays(worked, id).find(({ key }) => key === 'walls');
        if (walls?.via == null) {
          reasons.add(walls?.whyNot ?? '');
          continue;
        }
        told++;
        const { change } = setLegWay(id, 'it', { via: walls.via, certainty: 'seen' });
        const run = estimateOf(produce(worked.job, (draft) => change(draft))).asFound.worked.foundRuns.get(
          id,
        );
        expect(
          run?.segments.map(({ medium }) => medium),
          id,
        ).not.toContain('surface-clipped');
      }
    }
    expect(told).toBeGreaterThan(0);
    expect([...reasons].some((one) => one.endsWith('is in the way at this height'))).toBe(true);
  });
});
