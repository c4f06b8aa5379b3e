import { describe, expect, it } from 'vitest';
import { roomLeft } from '#engine/proof/room-left.ts';
import { demoEstimate, demoJob, estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { type Asked, askedConnection } from '../../../ui/edits/asked-connection.ts';

const { worked } = demoEstimate('saltglass-row').asFound;
const points = new Map(worked.job.points.map((point) => [point.label, point]));
const pointOf = (label: string) => {
  const point = points.get(label);
  if (point === undefined) throw new Error(`no ${label}`);
  return point;
};
const asked = (change: Partial<Asked>) =>
  askedConnection(worked, {
    point: pointOf('W2'),
    also: [pointOf('W3').id],
    how: 'fused',
    tap: { point: pointOf('R8').id },
    legId: null,
    ...change,
  });

describe('a connection of several points that somebody asks after', () => {
  it('has them one after the other behind the unit, along the ring, or along the radial', () => {
    const [w2, w3] = [pointOf('W2').id, pointOf('W3').id];
    expect(asked({})).toMatchObject({
      kind: 'fused-spur',
      feeds: [
        { from: 'unit', to: w2 },
        { from: w2, to: w3 },
      ],
    });
    const legId = worked.job.legs.find(({ circuit }) => circuit === pointOf('R8').circuit)?.id ?? null;
    expect(asked({ how: 'ring', legId })).toMatchObject({ kind: 'ring-extension', through: [w2, w3] });
    expect(asked({ how: 'radial' })).toMatchObject({ kind: 'radial' });
    expect(JSON.stringify(asked({ how: 'radial' }))).toContain(w3);
  });

  it('is one that the engine works out and checks', () => {
    const connection = asked({});
    if (connection === null) throw new Error('nothing is asked');
    const job = demoJob('saltglass-row');
    const scheme = { id: 'asked', name: 'asked', connections: [connection], remedies: [], locks: [] };
    const result = schemeOf(estimateOf({ ...job, schemes: [scheme] }), 'asked');
    const behind = roomLeft(result.worked).find(({ limitedBy }) => limitedBy === 'fuse');
    expect(behind).toMatchObject({ limitA: 13, pointIds: [pointOf('W2').id, pointOf('W3').id] });
    expect(result.runs.filter(({ connectionId }) => connectionId === 'asked')).toHaveLength(3);
  });
});
