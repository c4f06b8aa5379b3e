import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { demoJob, estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { openLegFor } from '../../../ui/edits/join-point.ts';
import { mayBeOpened } from '../../../ui/edits/join-sources.ts';

const ring = demoJob('saltglass-row');
/** The same circuit without its way back to the board: what is left of it is a radial, and was recorded as one. */
const radial: Job = produce(ring, (draft) => {
  draft.legs = draft.legs.filter(({ id }) => id !== 'leg-r09-cu');
  for (const circuit of draft.circuits) circuit.shape = 'radial';
});

const openedIn = (job: Job): readonly string[] => {
  const { worked } = estimateOf(job).asFound;
  return job.legs.filter((leg) => mayBeOpened(worked, leg)).map(({ id }) => id);
};

describe('a leg that is opened by hand', () => {
  it('is one of the ring, not the cable of a spur', () => {
    expect(openedIn(ring)).toEqual(ring.legs.map(({ id }) => id).filter((id) => id !== 'leg-r09s01'));
  });

  it('is any of a radial', () => {
    expect(openedIn(radial)).toEqual(radial.legs.map(({ id }) => id));
  });

  it('carries a radial on through the point, between two that a recorded cable joins', () => {
    const before = estimateOf(radial);
    const [scheme] = radial.schemes;
    const pointId = 'w1-living1';
    if (scheme === undefined) throw new Error('No scheme.');
    const edit = openLegFor({ worked: before.asFound.worked, scheme }, pointId, 'leg-r01r02');
    const after = estimateOf(produce(radial, (draft) => edit.change(draft)));
    const { worked, findings } = schemeOf(after, scheme.id);
    expect(worked.job.schemes[0]?.connections.at(-1)).toMatchObject({
      kind: 'ring-extension',
      leg: 'leg-r01r02',
      through: [pointId],
    });
    const opened = findings.filter(({ rule }) => rule === 'RG5');
    expect(opened.map(({ outcome, messageId }) => [outcome, messageId])).toEqual([
      ['passes', 'radialJoined'],
    ]);
  });
});
