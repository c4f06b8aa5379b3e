import fc from 'fast-check';
import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { addFoundJoint, addFoundSpur, addPointOnSpur } from '../../../ui/edits/found-branches.ts';
import { markedBy } from '../../../ui/edits/marked.ts';
import { edited, faultsOf } from './random-edits.ts';

const names = fc.constantFrom(...demoNames);
const place = {
  storey: demoJob('saltglass-row').storeys[0]?.id ?? '',
  at: [1000, 2000],
  heightMm: 0,
} as const;

describe('a spur that was found', () => {
  it('is a cable between two points that are there, and the further one is of its circuit', () => {
    fc.assert(
      fc.property(names, fc.nat(), fc.nat(), (name, i, j) => {
        const job = demoJob(name);
        const found = job.points.filter(({ status }) => status === 'existing');
        const [from, to] = [found[i % found.length], found[j % found.length]];
        const circuit = job.circuits[0];
        if (from === undefined || to === undefined || circuit === undefined || from === to) return;
        const spur = { legId: 'new-leg', circuitId: circuit.id, from, to, cable: null };
        const after = edited(job, addFoundSpur(spur));
        expect(faultsOf(after)).toEqual([]);
        expect(after.legs.length).toBe(job.legs.length + 1);
        const leg = after.legs.at(-1);
        expect(leg?.from).toMatchObject({ point: from.id });
        expect(leg?.to).toEqual({ point: to.id });
        expect(after.points.find(({ id }) => id === to.id)?.circuit).toBe(circuit.id);
      }),
    );
  });

  it('hangs behind the fuse of a fused unit', () => {
    const job = demoJob('saltglass-row');
    const [one, other] = job.points.filter(({ status }) => status === 'existing');
    if (one === undefined || other === undefined) throw new Error('no points');
    const from = { ...one, kind: 'fused-unit' } as const;
    const circuitId = job.circuits[0]?.id ?? '';
    const after = edited(job, addFoundSpur({ legId: 'new-leg', circuitId, from, to: other, cable: null }));
    expect(after.legs.at(-1)?.from).toEqual({ point: one.id, side: 'load' });
  });

  it('brings its point with it in one step, marked as the person knows it', () => {
    const job = demoJob('saltglass-row');
    const from = job.points.find(({ status }) => status === 'existing');
    if (from === undefined) throw new Error('no points');
    const circuitId = job.circuits[0]?.id ?? '';
    const point = { id: 'new-point', label: 'R99', status: 'existing', kind: 'socket-twin' } as const;
    const edit = addPointOnSpur(point, { legId: 'new-leg', circuitId, from, to: point, cable: null });
    const after = edited(job, markedBy(edit, 'assumed'));
    expect(faultsOf(after)).toEqual([]);
    expect(after.points.at(-1)).toMatchObject({
      id: 'new-point',
      circuit: circuitId,
      certainty: { kind: 'assumed' },
    });
    expect(edit.label).toBe(`Spur from ${from.label} to R99`);
  });
});

describe('a joint that was found in a cable', () => {
  it('parts it: both parts meet there, keep its cable and lose what was true of the whole', () => {
    fc.assert(
      fc.property(names, fc.nat(), (name, i) => {
        const job = demoJob(name);
        const leg = job.legs[i % job.legs.length];
        if (leg === undefined) return;
        const storey = job.storeys[0]?.id ?? '';
        const point = {
          id: 'new-joint',
          label: 'J99',
          place: { ...place, storey, at: [1000, 2000] as [number, number] },
        };
        const after = edited(job, addFoundJoint(leg, { point, legId: 'new-leg' }));
        expect(faultsOf(after)).toEqual([]);
        const [near, far] = ['', 'new-leg'].map((id) => after.legs.find((one) => one.id === (id || leg.id)));
        expect([near?.from, near?.to]).toEqual([leg.from, { point: 'new-joint' }]);
        expect([far?.from, far?.to]).toEqual([{ point: 'new-joint' }, leg.to]);
        for (const part of [near, far]) {
          expect(part?.cable).toEqual(leg.cable);
          expect(part).not.toHaveProperty('lengthMm');
          expect(part).not.toHaveProperty('via');
        }
        expect(after.legs.length).toBe(job.legs.length + 1);
      }),
    );
  });

  it('changes nothing of a job from which the cable is gone', () => {
    const job = demoJob('saltglass-row');
    const edit = addFoundJoint(
      { id: 'gone', circuit: 'none' },
      { point: { id: 'j', label: 'J', place: { ...place, at: [0, 0] } }, legId: 'l' },
    );
    expect(produce(job, (draft) => edit.change(draft))).toBe(job);
  });
});
