import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import type { Connection } from '#model/scheme.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { removeBoard, removeCircuit, removeLegs, removePoint } from '../../../ui/edits/remove-things.ts';
import { setReplaces } from '../../../ui/edits/replacements.ts';
import { edited, faultsOf, partsChanged } from './random-edits.ts';

const terrace = demoJob('saltglass-row');
const semi = demoJob('fernlow-close');

const pointOf = (job: Job, label: string) => {
  const point = job.points.find((each) => each.label === label);
  if (point === undefined) throw new Error(`no point ${label}`);
  return point;
};
const without = (job: Job, label: string): Job => edited(job, removePoint(pointOf(job, label)));
const connectionsOf = (job: Job, scheme: string): readonly Connection[] =>
  job.schemes.find(({ id }) => id === scheme)?.connections ?? [];

describe('removing a point', () => {
  it('takes its legs and its readings with it, and nothing else of the survey', () => {
    const { id } = pointOf(terrace, 'R4');
    const after = without(terrace, 'R4');
    expect(faultsOf(after)).toEqual([]);
    expect(JSON.stringify(after)).not.toContain(`"${id}"`);
    expect(after.legs).toHaveLength(terrace.legs.length - 2);
    expect(partsChanged(terrace, after)).toEqual(['legs', 'points', 'readings']);
  });

  it('says what it does by its label', () => {
    expect(removePoint({ id: 'r4', label: 'R4' }).label).toBe('Remove R4 and its cables');
  });

  it('hangs the rest of a fused branch where the point was', () => {
    const after = connectionsOf(without(semi, 'B2'), 'fused-unit');
    expect(after).toMatchObject([
      {
        feeds: [
          { from: 'unit', to: 'b1-kitchen' },
          { from: 'b1-kitchen', to: 'b3-kitchen' },
        ],
      },
    ]);
  });

  it('feeds the next of a radial from the board when its first point goes', () => {
    const after = connectionsOf(without(semi, 'B3'), 'new-radial');
    expect(after).toMatchObject([
      {
        feeds: [
          { from: 'origin', to: 'b2-kitchen' },
          { from: 'b2-kitchen', to: 'b1-kitchen' },
        ],
      },
    ]);
  });

  it('leaves a ring extension through the other points', () => {
    const after = connectionsOf(without(semi, 'B2'), 'ring-to-b3');
    expect(after).toMatchObject([{ kind: 'ring-extension', through: ['b1-kitchen', 'b3-kitchen'] }]);
  });

  it('takes a connection away with the last point that it was there for', () => {
    const after = ['B1', 'B2', 'B3'].reduce(without, semi);
    expect(after.schemes.map(({ connections }) => connections.length)).toEqual([0, 0, 0, 0]);
    expect(faultsOf(after)).toEqual([]);
  });

  it('hangs a spur in turn where the point was that it came from', () => {
    const after = connectionsOf(without(semi, 'B1'), 'no-fuse-b3');
    expect(after).toMatchObject([
      { id: 'c3-b2-spur', from: { point: 'a4-kitchen' } },
      { id: 'c3-b3-spur', from: { point: 'b2-kitchen' } },
    ]);
  });

  it('takes what hangs on an existing point away with it', () => {
    const after = connectionsOf(without(semi, 'A4'), 'no-fuse-b3');
    expect(after.map(({ id }) => id)).not.toContain('c3-b1-spur');
    expect(faultsOf(without(semi, 'A4'))).toEqual([]);
  });

  it('takes a fused spur away with its unit', () => {
    const after = connectionsOf(without(terrace, 'W4'), 'spurs-rcbo');
    expect(after.map(({ id }) => id)).toEqual(['c1-w1-spur', 'c1-w2-spur', 'c1-w3-spur']);
  });

  it('takes a ring extension away with a neighbour that it lay between', () => {
    const after = without(terrace, 'R9');
    expect(connectionsOf(after, 'ring-to-w2').map(({ id }) => id)).not.toContain('c2-w2-ring');
    expect(faultsOf(after)).toEqual([]);
  });

  it('leaves a point where it is that the removed one was to replace', () => {
    const [old, wanted] = [pointOf(terrace, 'R2'), pointOf(terrace, 'W1')];
    const after = edited(terrace, setReplaces(wanted, old), removePoint(wanted));
    expect(pointOf(after, 'R2').status).toBe('existing');
  });

  it('takes locks and remedies on what went along', () => {
    const locked: Job = {
      ...terrace,
      schemes: terrace.schemes.map((scheme) => ({
        ...scheme,
        locks: scheme.connections.map(({ id }) => id),
        remedies: [...scheme.remedies, { kind: 're-box', at: 'r1-hallway' }],
      })),
    };
    const after = without(locked, 'R1');
    expect(faultsOf(after)).toEqual([]);
    for (const scheme of after.schemes) {
      expect(scheme.locks).toEqual(scheme.connections.map(({ id }) => id));
      expect(scheme.remedies.some(({ at }) => at === 'r1-hallway')).toBe(false);
    }
  });
});

describe('removing a leg', () => {
  it('leaves a ring extension that was cut into it between the same neighbours', () => {
    const after = edited(terrace, removeLegs(['leg-r08r09'], 'R8–R9'));
    const extension = connectionsOf(after, 'ring-to-w2').find(({ id }) => id === 'c2-w2-ring');
    expect(extension).toMatchObject({ out: { how: 'terminals' }, back: { how: 'terminals' } });
    expect(extension).not.toHaveProperty('leg');
    expect(faultsOf(after)).toEqual([]);
  });

  it('takes a spur away that was joined into it', () => {
    const after = edited(terrace, removeLegs(['leg-r08r09'], 'R8–R9'));
    expect(connectionsOf(after, 'spurs-rcbo').map(({ id }) => id)).not.toContain('c1-w2-spur');
  });
});

describe('removing a circuit or a board', () => {
  it('leaves the points, of no circuit', () => {
    const [circuit] = terrace.circuits;
    const after = circuit === undefined ? terrace : edited(terrace, removeCircuit(circuit));
    expect(after.points.map(({ id }) => id)).toEqual(terrace.points.map(({ id }) => id));
    expect(after.points.every((point) => point.circuit === undefined)).toBe(true);
    expect([after.circuits, after.legs]).toEqual([[], []]);
    expect(faultsOf(after)).toEqual([]);
  });

  it('takes the circuits of a board with it', () => {
    const [board] = semi.boards;
    const after = board === undefined ? semi : edited(semi, removeBoard(board));
    expect([after.boards, after.circuits, after.legs]).toEqual([[], [], []]);
    expect(faultsOf(after)).toEqual([]);
  });
});
