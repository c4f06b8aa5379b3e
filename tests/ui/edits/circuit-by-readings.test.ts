import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { circuitShapes } from '#engine/circuit/circuit-shapes.ts';
import { foundNetwork } from '#engine/circuit/found-network.ts';
import { inferCircuit } from '#engine/proof/readings/infer-circuit.ts';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import { type DemoName, demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { circuitByReadings } from '../../../ui/edits/circuit-by-readings.ts';
import { setPointsInOrder } from '../../../ui/edits/ring-in-order.ts';
import { orderOfLegs } from '../../../ui/elements/as-found/order-of-legs.ts';

const cable = { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 } as const;

function circuitOf(job: Job) {
  const [circuit] = job.circuits;
  if (circuit === undefined) throw new Error('no circuit');
  return circuit;
}

/** The job with its circuit recorded as its readings tell it. */
function takenOver(job: Job): Job {
  const circuit = circuitOf(job);
  const said = inferCircuit(job, circuit.id);
  const edit = circuitByReadings({ circuit, said, was: orderOfLegs(job, circuit), cable });
  const made = produce(job, (draft) => edit.change(draft));
  const read = readJob(made);
  if (!read.ok) throw new Error(read.faults.map(({ message }) => message).join('\n'));
  return made;
}

/** What the legs make of the ring: its points in order, and spurs with where they start. */
function wiredAs(job: Job) {
  const network = foundNetwork(job);
  const shape = circuitShapes(job, network).get(circuitOf(job).id);
  return {
    shape: shape?.shape,
    ring: shape?.ringNodes,
    spurs: shape?.spurs.map(({ rootNode, accessoryNodes }) => [rootNode, ...accessoryNodes]),
  };
}

describe.each(['saltglass-row', 'fernlow-close', 'quarrel-court'] as const)(
  '%s by its readings',
  (name: DemoName) => {
    const job = { ...demoJob(name), schemes: [] };

    it('is wired as it was recorded, where the two agree', () => {
      expect(wiredAs(takenOver(job))).toEqual(wiredAs(job));
      expect(takenOver(job).legs).toEqual(job.legs);
    });

    it('is found again from nothing but its points and readings, lengths to within a metre', () => {
      const bare = takenOver({ ...job, legs: [] });
      expect(wiredAs(bare)).toEqual(wiredAs(job));
      expect(circuitOf(bare).certainty?.order).toBe('measured');
      for (const leg of job.legs) {
        const ends = (one: Job['legs'][number]): string =>
          JSON.stringify([one.from, one.to].map((end) => ('point' in end ? end.point : 'board')).sort());
        const read = bare.legs.find((each) => ends(each) === ends(leg));
        expect(Math.abs((read?.lengthMm ?? 0) - (leg.lengthMm ?? -1e6))).toBeLessThan(1000);
        expect(read?.certainty?.length).toBe('measured');
      }
    });

    it('is mended where two neighbours were recorded in the wrong order', () => {
      const circuit = circuitOf(job);
      const order = orderOfLegs(job, circuit);
      const [one, two, three, ...rest] = order;
      if (one === undefined || two === undefined || three === undefined) throw new Error('too few points');
      const now = [one, three, two, ...rest];
      const legIds = [...now, 'back'].map((_, i) => `wrong-${String(i).padStart(4, '0')}`);
      const wrong = produce(job, (draft) =>
        setPointsInOrder(circuit, { was: order, now, isRing: true, cable, legIds }).change(draft),
      );
      const said = inferCircuit(wrong, circuit.id);
      expect(said.contradictions.map(({ kind }) => kind)).toContain('order');
      expect(wiredAs(wrong).ring).not.toEqual(wiredAs(job).ring);
      expect(wiredAs(takenOver(wrong))).toEqual(wiredAs(job));
    });
  },
);
