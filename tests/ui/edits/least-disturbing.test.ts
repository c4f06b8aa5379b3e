import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { leastDisturbingRun } from '#engine/least-disturbing-run.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { demoEstimate, estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { pinRun } from '../../../ui/edits/pin-run.ts';
import { edited } from './random-edits.ts';

const library = demoLibrary();

/** A scheme in which one cable takes the least disturbing way; null where it does so already. */
function calmed(scheme: SchemeEstimate, runId: string): SchemeEstimate | null {
  const { worked, runs, id } = scheme;
  const run = runs.find((one) => one.id === runId);
  if (run === undefined) throw new Error(`no run ${runId}`);
  const via = leastDisturbingRun(worked.job, library, run);
  if (via === null) return null;
  const at = { schemeId: id, connectionId: run.connectionId ?? '' };
  return schemeOf(estimateOf(edited(worked.job, pinRun(worked, at, { run, name: 'it', via }))), id);
}

describe('the least disturbing way of one cable', () => {
  it.each(['saltglass-row', 'fernlow-close', 'quarrel-court'] as const)(
    'disturbs the house of %s no more than the way found, and once it is taken there is none better',
    (demo) => {
      const tried = demoEstimate(demo).schemes.flatMap((scheme) =>
        scheme.runs
          .filter(({ connectionId, pinned }) => connectionId !== null && !pinned)
          .map(({ id }) => ({ scheme, id, after: calmed(scheme, id) })),
      );
      const changed = tried.filter(({ after }) => after !== null);
      console.log(`${demo}: ${changed.length} of ${tried.length} cables have a less disturbing way`);
      expect(tried.length).toBeGreaterThan(0);
      for (const { scheme, id, after } of changed) {
        expect(after?.messPoints, `${scheme.id} ${id}`).toBeLessThanOrEqual(scheme.messPoints + 1e-9);
        const [now] = after?.runs.filter((one) => one.id === id) ?? [];
        expect(now?.pinned, id).toBe(true);
        expect(after === null || now === undefined ? null : calmed(after, id), id).toBeNull();
      }
    },
  );
});
