import type { Cable } from '#model/cable.ts';
import type { Circuit, Leg } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { markOrder } from '../../edits/circuits.ts';
import { markable } from '../../edits/marked.ts';
import { setPointsInOrder } from '../../edits/ring-in-order.ts';
import type { JobEdit } from '../../job-events.ts';
import { newId } from '../../new-id.ts';
import { orderOfLegs } from './order-of-legs.ts';

/** The cable that most of a circuit's legs are of; null where none is recorded. */
export function usualCable(legs: readonly Leg[]): Cable | null {
  const counts = new Map<string, { readonly cable: Cable; count: number }>();
  for (const { cable } of legs) {
    if (cable === undefined) continue;
    const key = JSON.stringify(cable);
    counts.set(key, { cable, count: (counts.get(key)?.count ?? 0) + 1 });
  }
  return [...counts.values()].toSorted((a, b) => b.count - a.count)[0]?.cable ?? null;
}

/** Lays a circuit's cable through points in order, to be marked as the person knows it. */
export const orderEdit = (job: Job, circuit: Circuit, now: readonly string[], cable: Cable | null): JobEdit =>
  markable(
    setPointsInOrder(circuit, {
      was: orderOfLegs(job, circuit),
      now,
      isRing: circuit.shape !== 'radial',
      cable,
      legIds: [...now, 'back'].map(() => newId()),
    }),
    (certainty) => markOrder(circuit, certainty),
  );
