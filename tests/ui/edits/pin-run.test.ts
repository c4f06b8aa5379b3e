import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { readJob } from '#model/read-job.ts';
import { demoEstimate, demoNames, estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { pinnedVia, pinRun, whyNotPinned } from '../../../ui/edits/pin-run.ts';
import { waypointAt } from '../../../ui/way-drawing/levels.ts';

describe('the way of a new cable pinned by hand', () => {
  it.each(demoNames)('is that cable’s and no other’s, and can be let go again, in %s', (name) => {
    const before = demoEstimate(name);
    let pinned = 0;
    for (const { id: schemeId, worked } of before.schemes) {
      const { job } = worked;
      for (const run of worked.runs) {
        const connectionId = run.connectionId ?? '';
        const { position } = run.from;
        if (position === null || run.to.position === null || whyNotPinned(worked, run) !== null) continue;
        const at = { schemeId, connectionId };
        const via = [waypointAt(position)];
        const changed = produce(job, (draft) => pinRun(worked, at, { run, name: 'it', via }).change(draft));
        expect(readJob(changed), run.id).toMatchObject({ ok: true });
        const now = schemeOf(estimateOf(changed), schemeId).worked;
        const wasPinned = worked.runs.filter((one) => one.pinned).map(({ id }) => id);
        expect(
          now.runs.filter((one) => one.pinned).map(({ id }) => id),
          run.id,
        ).toEqual([...new Set([...wasPinned, run.id])].sort());
        const own = now.runs.find(({ id }) => id === run.id);
        expect(own && pinnedVia(now, own), run.id).toEqual(via);
        const letGo = produce(changed, (draft) =>
          pinRun(now, at, { run, name: 'it', via: [] }).change(draft),
        );
        if (!run.pinned) expect(letGo).toEqual(job);
        pinned++;
      }
    }
    expect(pinned).toBeGreaterThan(2);
  });
});
