import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { addCircuit, setCircuitLoads } from '../../../ui/edits/circuits.ts';
import { setLegFact } from '../../../ui/edits/legs.ts';
import { endToEnd, setEndToEnd } from '../../../ui/edits/readings.ts';
import { edited, faultsOf, partsChanged, pick } from './random-edits.ts';

describe.each(demoNames)('the survey of %s', (name) => {
  const job = demoJob(name);
  const board = job.boards[0]?.id ?? '';

  it('takes a cable into another circuit with its ends at the board', () => {
    fc.assert(
      fc.property(fc.nat({ max: 100 }), (number) => {
        const leg = pick(job.legs, number);
        if (leg === undefined) return;
        const after = edited(
          job,
          addCircuit('other', 'Other', board),
          setLegFact(leg.id, leg.id, 'circuit', 'other'),
        );
        const moved = after.legs.find(({ id }) => id === leg.id);
        for (const end of [moved?.from, moved?.to])
          if (end !== undefined && 'origin' in end) expect(end.origin).toBe('other');
        expect(moved?.circuit).toBe('other');
        expect(after.legs.filter(({ id }) => id !== leg.id)).toEqual(
          job.legs.filter(({ id }) => id !== leg.id),
        );
        expect(faultsOf(after)).toEqual([]);
      }),
    );
  });

  it('writes loads that no point stands for, and forgets the list with the last of them', () => {
    for (const circuit of job.circuits) {
      const loaded = edited(job, setCircuitLoads(circuit, [{ watts: 3000, use: 'immersion heater' }]));
      expect(loaded.circuits.find(({ id }) => id === circuit.id)?.loads).toHaveLength(1);
      expect(faultsOf(loaded)).toEqual([]);
      const emptied = edited(loaded, setCircuitLoads(circuit, []));
      expect('loads' in (emptied.circuits.find(({ id }) => id === circuit.id) ?? {})).toBe(false);
    }
  });

  it('holds one reading a conductor from end to end, the latest, and none once emptied', () => {
    for (const circuit of job.circuits) {
      const write = (ohm: number | null) =>
        setEndToEnd(circuit, { conductor: 'N', ohm, newId: 'neutral-read' });
      const written = edited(job, write(0.5), write(0.513));
      expect(partsChanged(job, written)).toEqual(['readings']);
      expect(endToEnd(written.readings, circuit.id, 'N')?.ohm).toBe(0.513);
      const known = endToEnd(job.readings, circuit.id, 'N') === null ? 0 : 1;
      expect(written.readings).toHaveLength(job.readings.length + 1 - known);
      const emptied = edited(written, write(null));
      expect(endToEnd(emptied.readings, circuit.id, 'N')).toBeNull();
      expect(faultsOf(emptied)).toEqual([]);
    }
  });
});
