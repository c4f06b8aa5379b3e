import type { Job } from '#model/job.ts';
import { type CircuitFit, circuitFit } from './circuit-fit.ts';
import { orderConfidence } from './confidence.ts';
import { contradictions } from './contradictions.ts';
import type { InferredCircuit, ReadingsTaken } from './inferred-circuit.ts';
import { inferredLegs } from './inferred-legs.ts';
import { inferredPoints } from './inferred-points.ts';
import { conductors, type LoopReadings, loopNames, loopReadings } from './loop-readings.ts';
import { misfitCauses } from './misfit-causes.ts';
import { nextReadings } from './next-reading.ts';
import { undecidable } from './undecidable.ts';

/**
 * What the readings of a circuit, taken before the work, say of its wiring: its order, lengths and spurs with their
 * confidence, what contradicts the drawing, what to measure next. Odd and missing readings make it say less, never fail.
 *
 * Readings cannot show that a point may carry a spur, and it is never said.
 */
export function inferCircuit(job: Job, circuitId: string): InferredCircuit {
  const labels = new Map(job.points.map(({ id, label }) => [id, label]));
  const labelOf = (id: string): string => labels.get(id) ?? id;
  const fit = circuitFit(job, circuitId);
  const points = inferredPoints(fit, labelOf);
  const order = orderOf(fit);
  const legs = order.answer === 'cannot-say' ? [] : inferredLegs(fit, labelOf);
  const told = { points, order, legs, loop: fit.loop };
  return {
    circuit: circuitId,
    taken: takenOf(fit.readings),
    ...told,
    contradictions: contradictions(job, { circuitId, fit, told, labelOf }),
    causes: misfitCauses(fit, circuitId),
    next: fit.fitted.channels.length === 0 && points.length === 0 ? [] : nextReadings(fit, points, labelOf),
    undecidable: undecidable(points, labelOf),
  };
}

/** The circuits of a job of which some loop was read before the work, in the job's order. */
export const circuitsRead = (job: Job): readonly string[] =>
  job.circuits
    .map(({ id }) => id)
    .filter((id) => {
      const { endToEnd, loops } = loopReadings(job, id);
      return loops.size > 0 || Object.values(endToEnd).some((read) => read !== null);
    });

function orderOf({ fitted, ring }: CircuitFit): InferredCircuit['order'] {
  const fixed = fitted.points.filter(({ point }) => point.kind !== 'joint');
  const placed = fixed.filter((point) => point.placed !== null);
  if (ring.length === 0 || placed.length < 2)
    return {
      answer: 'cannot-say',
      points: [],
      confidence: 0,
      words:
        'These readings cannot give the order: points have to be read linked, from end A and from end B.',
    };
  const confidence = orderConfidence(ring.map((point) => point.placed));
  const answer = placed.length === fixed.length ? 'told' : 'partly';
  const words =
    answer === 'told'
      ? 'The order of the ring from end A, by these readings.'
      : `The order of the ${ring.length} points of the ring that are placed; ${fixed.length - placed.length} are not.`;
  return { answer, points: ring.map(({ point }) => point.id), confidence, words };
}

function takenOf({ endToEnd, loops, leftOut, points }: LoopReadings): ReadingsTaken {
  const rows = loopNames.flatMap((loop) => {
    const read = [...(loops.get(loop)?.values() ?? [])];
    const count = (is: (at: (typeof read)[number]) => boolean): number => read.filter(is).length;
    return [
      {
        loop,
        fromA: count(({ fromA }) => fromA !== null),
        fromB: count(({ fromB }) => fromB !== null),
        points: count(({ crossed }) => crossed !== null),
      },
    ];
  });
  return {
    endToEnd: conductors.filter((conductor) => endToEnd[conductor] !== null),
    linked: rows
      .filter(({ fromA, fromB }) => fromA + fromB > 0)
      .map(({ loop, fromA, fromB }) => ({ loop, fromA, fromB })),
    crossed: rows.filter((row) => row.points > 0).map(({ loop, points: count }) => ({ loop, points: count })),
    plates: points.filter(({ asFound }) => (asFound?.cablesSeen ?? 0) > 0).length,
    leftOut,
  };
}
