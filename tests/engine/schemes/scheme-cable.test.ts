import { describe, expect, it } from 'vitest';
import { schemeCable } from '#engine/schemes/scheme-cable.ts';
import type { Job } from '#model/job.ts';
import { demoJob, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

const withoutWalls = (job: Job): Job => ({
  ...job,
  storeys: [],
  points: job.points.map(({ place: _, ...point }) => point),
});

describe('the cable of a scheme', () => {
  it('is what the bill takes, with places and without', () => {
    for (const job of [demoJob('saltglass-row'), withoutWalls(demoJob('saltglass-row'))]) {
      for (const scheme of estimateOf(job).schemes) {
        const runIds = new Set(scheme.runs.map(({ id }) => id));
        const takenOffM = scheme.takeoff
          .filter(({ item, causes }) => item.startsWith('cable-') && causes.some((id) => runIds.has(id)))
          .reduce((sum, line) => sum + line.measured, 0);
        expect(schemeCable(scheme.runs).cableMm / 1e3).toBeCloseTo(takenOffM, 2);
      }
    }
  });

  it('tells how many runs have no length of their own', () => {
    const placed = estimateOf(demoJob('saltglass-row')).schemes.map(({ runs }) => schemeCable(runs));
    const unplaced = estimateOf(withoutWalls(demoJob('saltglass-row'))).schemes;
    expect(placed.map(({ typicalRuns }) => typicalRuns)).toEqual(placed.map(() => 0));
    for (const { runs } of unplaced) expect(schemeCable(runs).typicalRuns).toBe(runs.length);
    expect(unplaced.some(({ runs }) => runs.length > 0)).toBe(true);
  });
});
