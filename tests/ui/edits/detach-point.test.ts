import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import { demoEstimate, demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { removeConnection } from '../../../ui/edits/connections.ts';
import { detachPoint } from '../../../ui/edits/detach-point.ts';
import { type JoinHow, joinPoint } from '../../../ui/edits/join-point.ts';
import { removePoint } from '../../../ui/edits/remove-things.ts';
import { edited, faultsOf } from './random-edits.ts';

const terrace = demoJob('saltglass-row');
const { worked } = demoEstimate('saltglass-row').asFound;
const [w1, w2, w3, w4] = ['w1-living1', 'w2-bedroom', 'w3-bedroom', 'w4-boiler1'];
const device = { standard: 'BS-EN-60898', curve: 'B', ratingA: 20 } as const;
const board = terrace.boards[0]?.id ?? '';
const circuit = terrace.circuits[0]?.id ?? '';

const schemeOf = (connections: readonly Connection[]): Scheme => ({
  id: 'tried',
  name: 'Tried',
  connections: [...connections],
  remedies: [],
  locks: [],
});
const jobWith = (connections: readonly Connection[]): Job => ({
  ...terrace,
  schemes: [schemeOf(connections)],
});
const triedIn = (job: Job): readonly Connection[] => {
  expect(faultsOf(job)).toEqual([]);
  return job.schemes[0]?.connections ?? [];
};
const removed = (connections: readonly Connection[], id: string): readonly Connection[] =>
  triedIn(edited(jobWith(connections), removePoint({ id, label: id })));
const detached = (connections: readonly Connection[], id: string): readonly Connection[] => {
  const scheme = structuredClone(schemeOf(connections));
  detachPoint(scheme, id);
  return scheme.connections;
};
const joined = (connections: readonly Connection[], id: string, how: JoinHow): readonly Connection[] => {
  const job = jobWith(connections);
  const context = { worked: { ...worked, job }, scheme: schemeOf(connections), makeId: () => 'made' };
  return triedIn(edited(job, joinPoint(context, id, how)));
};

const branch: Connection = {
  id: 'branch',
  kind: 'fused-spur',
  from: { point: 'r1-hallway' },
  unit: { fuseA: 13 },
  feeds: [
    { from: 'unit', to: w1 },
    { from: w1, to: w2 },
  ],
};
const radial: Connection = {
  id: 'radial',
  kind: 'radial',
  board,
  device,
  feeds: [{ from: 'origin', to: w1 }],
};
const unitOfW4: Connection = {
  id: 'unit',
  kind: 'fused-spur',
  from: { point: 'r6-kitchen' },
  unit: w4,
  feeds: [
    { from: 'unit', to: w1 },
    { from: w1, to: w2 },
  ],
  cable: { type: 'flat-twin', lineMm2: 4, cpcMm2: 1.5 },
};
const ring: Connection = {
  id: 'ring',
  kind: 'ring-extension',
  circuit,
  between: [{ point: 'r8-bedroom' }, { point: 'r9-bedroom' }],
  out: { how: 'terminals' },
  back: { how: 'terminals' },
  through: [w1, w2],
};
const spur = (from: string, to: string, id = `spur-${to}`): Connection => ({
  id,
  kind: 'spur',
  from: { point: from },
  to,
});

describe.each([
  ['taken out of a scheme', detached],
  ['removed from the job', removed],
])('what hangs on a point that is %s', (_how, taken) => {
  it('stays behind the fuse: on the point before it in the branch', () => {
    const left = taken([branch, spur(w2, w3)], w2);
    expect(left).toMatchObject([
      { id: 'branch', feeds: [{ from: 'unit', to: w1 }] },
      { kind: 'spur', from: { point: w1 }, to: w3 },
    ]);
  });

  it('stays behind the fuse: fed by the branch itself where the point was its first', () => {
    const feeds = [{ from: 'unit', to: w1 }];
    const left = taken([{ ...branch, feeds }, spur(w1, w3)], w1);
    expect(left).toMatchObject([{ id: 'branch', feeds: [{ from: 'unit', to: w3 }] }]);
  });

  it('stays behind the fuse of a unit that is a point', () => {
    const left = taken([unitOfW4, spur(w1, w3)], w1);
    expect(left).toMatchObject([
      { id: 'unit', unit: w4, feeds: [{ from: 'unit', to: w2 }] },
      { kind: 'spur', from: { point: w4 }, to: w3 },
    ]);
  });

  it('keeps its own fuse where it is a fused spur in such a branch', () => {
    const own: Connection = {
      id: 'own',
      kind: 'fused-spur',
      from: { point: w1 },
      unit: { fuseA: 3 },
      feeds: [{ from: 'unit', to: w3 }],
    };
    expect(taken([branch, own], w1)).toMatchObject([
      { id: 'branch', feeds: [{ from: 'unit', to: w2 }] },
      { id: 'own', from: { point: w2 } },
    ]);
    expect(taken([{ ...branch, feeds: [{ from: 'unit', to: w1 }] }, own], w1)).toMatchObject([
      { id: 'own', from: { point: 'r1-hallway' } },
    ]);
  });

  it('is fed from the board where the point was the first of a radial', () => {
    const left = taken([radial, spur(w1, w3)], w1);
    expect(left).toMatchObject([{ id: 'radial', feeds: [{ from: 'origin', to: w3 }] }]);
  });

  it('hangs on the next of the ring, and on the ring’s own point once the extension is gone', () => {
    expect(taken([ring, spur(w1, w3)], w1)).toMatchObject([
      { id: 'ring', through: [w2] },
      { from: { point: w2 }, to: w3 },
    ]);
    expect(taken([{ ...ring, through: [w1] }, spur(w1, w3)], w1)).toMatchObject([
      { from: { point: 'r8-bedroom' }, to: w3 },
    ]);
  });

  it('hangs where a spur was joined on', () => {
    expect(taken([spur('r1-hallway', w1), spur(w1, w3)], w1)).toMatchObject([
      { from: { point: 'r1-hallway' }, to: w3 },
    ]);
  });

  it('goes with a unit, never to be joined on ahead of its fuse', () => {
    expect(taken([unitOfW4, spur(w4, w3)], w4)).toEqual([]);
  });

  it('leaves a connection alone that has nothing to do with the point', () => {
    const empty: Connection = { ...branch, id: 'empty', feeds: [] };
    expect(taken([empty, spur('r1-hallway', w1)], w1)).toEqual([empty]);
  });
});

describe('taking a connection out', () => {
  it('takes all that it joins out, and nothing that hangs on it comes ahead of its fuse', () => {
    const at = { schemeId: 'tried', connectionId: 'branch' };
    const left = triedIn(edited(jobWith([branch, spur(w2, w3)]), removeConnection(at, 'a branch')));
    expect(left).toEqual([]);
  });
});

describe('joining a point in another way', () => {
  it('leaves what the unit feeds behind it, in the same cable', () => {
    for (const by of ['joint', 'spur'] as const) {
      const left = joined([unitOfW4], w4, { by });
      expect(left).toMatchObject([
        { id: 'made', kind: 'fused-spur', unit: w4, feeds: unitOfW4.feeds, cable: unitOfW4.cable },
      ]);
    }
  });

  it.each([
    ['together with others', { by: 'with', connectionId: 'radial' }, [radial]],
    ['in turn', { by: 'in-turn', after: w1 }, [spur('r1-hallway', w1)]],
    ['by a radial', { by: 'radial' }, []],
  ] as const)('leaves what hangs on it where it is: %s', (_name, how, others) => {
    const hanging = spur(w2, w3);
    const left = joined([...others, spur('r8-bedroom', w2), hanging], w2, how);
    expect(left).toContainEqual(hanging);
  });

  it('hangs elsewhere what the point is to hang on itself from now on', () => {
    const left = joined([spur('r8-bedroom', w2), spur(w2, w3)], w2, { by: 'in-turn', after: w3 });
    expect(left).toMatchObject([
      { from: { point: 'r8-bedroom' }, to: w3 },
      { from: { point: w3 }, to: w2 },
    ]);
  });

  it('hangs elsewhere what hangs on a point that nothing joins in the end', () => {
    const left = joined([spur('r8-bedroom', w2), spur(w2, w3)], w2, { by: 'with', connectionId: 'spur-w9' });
    expect(left).toMatchObject([{ from: { point: 'r8-bedroom' }, to: w3 }]);
  });
});
