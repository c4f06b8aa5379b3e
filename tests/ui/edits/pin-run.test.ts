import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import type { Estimate } from '#engine/schemes/estimate-result.ts';
import { readJob } from '#model/read-job.ts';
import {
  demoEstimate,
  demoJob,
  demoNames,
  estimateOf,
  schemeOf,
} from '#tests/engine/demo-jobs/demo-estimates.ts';
import { pinnedVia, pinRun, whyNotPinned } from '../../../ui/edits/pin-run.ts';
import { waypointAt } from '../../../ui/way-drawing/levels.ts';

/** Pins each new cable of an estimate in turn, and lets it go again; gives back the ids of those that were pinned. */
function pinEach(before: Estimate): readonly string[] {
  const pinned: string[] = [];
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
      const letGo = produce(changed, (draft) => pinRun(now, at, { run, name: 'it', via: [] }).change(draft));
      if (!run.pinned) expect(letGo).toEqual(job);
      pinned.push(run.id);
    }
  }
  return pinned;
}

describe('the way of a new cable pinned by hand', () => {
  it.each(demoNames)('is that cable’s and no other’s, and can be let go again, in %s', (name) => {
    expect(pinEach(demoEstimate(name)).length).toBeGreaterThan(2);
  });

  it('can be that of a cable between two ends without names: from a joint in a leg to a unit that comes along', () => {
    const job = demoJob('saltglass-row');
    const spur = job.schemes[0]?.connections.find(({ id }) => id === 'c1-w2-spur');
    const branch = job.schemes
      .find(({ id }) => id === 'fused-beds')
      ?.connections.find(({ id }) => id === 'c5-beds-fu');
    if (spur?.kind !== 'spur' || branch?.kind !== 'fused-spur') throw new Error('both are in the demo');
    const schemes = [
      {
        id: 'off-joint',
        name: 'Off a joint',
        connections: [{ ...branch, from: spur.from }],
        remedies: [],
        locks: [],
      },
    ];
    const before = estimateOf({ ...job, schemes });
    const worked = schemeOf(before, 'off-joint').worked;
    const nameless = worked.runs.find(({ from, to }) => from.pointId === null && to.pointId === null);
    expect(nameless && whyNotPinned(worked, nameless)).toBeNull();
    const pinned = pinEach(before);
    expect(pinned).toContain(nameless?.id);
    expect(pinned).toHaveLength(3);
  });
});
