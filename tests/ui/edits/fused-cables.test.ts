import { describe, expect, it } from 'vitest';
import type { Cable } from '#model/cable.ts';
import type { Job } from '#model/job.ts';
import type { Connection } from '#model/scheme.ts';
import { demoEstimate, demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { fuseBefore } from '../../../ui/edits/fuse-before.ts';
import { type FoundSpur, foundSpurs, mendSpur } from '../../../ui/edits/mend-spur.ts';
import { edited, faultsOf } from './random-edits.ts';

const terrace = demoJob('saltglass-row');
const s1: FoundSpur = (() => {
  const [first] = foundSpurs(demoEstimate('saltglass-row').asFound.worked);
  if (first === undefined) throw new Error('the terrace has no spur');
  return first;
})();
const [w1, w2] = ['w1-living1', 'w2-bedroom'];
const thick: Cable = { type: 'flat-twin', lineMm2: 4, cpcMm2: 1.5 };
const thin: Cable = { type: 'flat-twin', lineMm2: 1.5, cpcMm2: 1 };
const storey = terrace.storeys[0]?.id ?? '';

interface Chosen {
  readonly cable?: Cable;
  readonly isPinned?: boolean;
}
const spur = (from: string, to: string, { cable, isPinned }: Chosen = {}): Connection => ({
  id: `spur-${to}`,
  kind: 'spur',
  from: { point: from },
  to,
  ...(cable === undefined ? {} : { cable }),
  ...(isPinned === true
    ? {
        runs: [
          {
            from: { point: from },
            to: { point: to },
            via: [{ storey, at: [1000, 1000] as [number, number], heightMm: 300 }],
          },
        ],
      }
    : {}),
});
const tried = (connections: readonly Connection[]): Job => ({
  ...terrace,
  schemes: [{ id: 'tried', name: 'Tried', connections: [...connections], remedies: [], locks: [] }],
});
function fused(connections: readonly Connection[]): readonly [label: string, branch: Connection | undefined] {
  const job = tried(connections);
  const [scheme] = job.schemes;
  if (scheme === undefined) throw new Error('no scheme');
  const edit = fuseBefore(scheme, connections[0]?.id ?? '', 'W1');
  const after = edited(job, edit);
  expect(faultsOf(after)).toEqual([]);
  return [edit.label, after.schemes[0]?.connections[0]];
}
function fusedDown(connections: readonly Connection[]): readonly [label: string, job: Job] {
  const job = tried(connections);
  const [scheme] = job.schemes;
  if (scheme === undefined) throw new Error('no scheme');
  const edit = mendSpur(scheme, s1, 'fuse', 'S1');
  const after = edited(job, edit);
  expect(faultsOf(after)).toEqual([]);
  return [edit.label, after];
}

describe('a fused unit put before new spurs', () => {
  it('keeps the cable chosen by hand and says nothing of it', () => {
    const [label, branch] = fused([
      spur('r1-hallway', w1, { cable: thick }),
      spur(w1, w2, { cable: { ...thick } }),
    ]);
    expect(branch).toMatchObject({ kind: 'fused-spur', cable: thick });
    expect(label).toBe('Put a fused unit before W1');
  });

  it('says that one cable is used where those behind had another', () => {
    const [label, branch] = fused([spur('r1-hallway', w1, { cable: thick }), spur(w1, w2, { cable: thin })]);
    expect(branch).toMatchObject({ cable: thick });
    expect(label).toBe('Put a fused unit before W1, all in the cable to the first');
    const [other, usual] = fused([spur('r1-hallway', w1), spur(w1, w2, { cable: thin })]);
    expect(usual).not.toHaveProperty('cable');
    expect(other).toBe('Put a fused unit before W1, all in the cable to the first');
  });

  it('keeps the ways drawn by hand behind the first, and says that the one to it is found anew', () => {
    const [label, branch] = fused([
      spur('r1-hallway', w1, { isPinned: true }),
      spur(w1, w2, { isPinned: true }),
    ]);
    expect(branch?.runs?.map(({ from, to }) => [from, to])).toEqual([[{ point: w1 }, { point: w2 }]]);
    expect(label).toBe('Put a fused unit before W1, the way to the first found anew');
    expect(fused([spur('r1-hallway', w1), spur(w1, w2, { isPinned: true })])[0]).toBe(
      'Put a fused unit before W1',
    );
  });
});

describe('a fused unit put before an old spur', () => {
  const outlet = s1.pointIds.at(-1) ?? '';

  it('keeps the cable and the ways of what hangs on it, there and back', () => {
    const hanging = [spur(outlet, w1, { cable: thick, isPinned: true }), spur(w1, w2, { cable: thick })];
    const [label, after] = fusedDown(hanging);
    const [scheme] = after.schemes;
    expect(label).toBe('Put a fused unit before S1');
    expect(scheme?.connections).toMatchObject([{ kind: 'fuse-down', cable: thick }]);
    expect(scheme?.connections[0]?.runs).toHaveLength(1);
    const back = scheme === undefined ? after : edited(after, mendSpur(scheme, s1, 'none', 'S1'));
    expect(back.schemes[0]?.connections).toMatchObject([
      { kind: 'spur', to: w1, cable: thick, runs: [{ to: { point: w1 } }] },
      { kind: 'spur', to: w2, cable: thick },
    ]);
    expect(back.schemes[0]?.connections[1]).not.toHaveProperty('runs');
  });

  it('says that one cable is used where they differ', () => {
    const [label, after] = fusedDown([spur(outlet, w1, { cable: thick }), spur(w1, w2)]);
    expect(label).toBe('Put a fused unit before S1, all in the cable to the first');
    expect(after.schemes[0]?.connections).toMatchObject([{ cable: thick }]);
  });
});
