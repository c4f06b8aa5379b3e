import fc from 'fast-check';
fc.configureGlobal({ numRuns: 3000 });
import { describe, expect, it } from 'vitest';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { setPointsInOrder } from '../../../ui/edits/ring-in-order.ts';
import { orderOfLegs } from '../../../ui/elements/as-found/order-of-legs.ts';
import { edited, faultsOf } from '../edits/random-edits.ts';

const job = demoJob('saltglass-row');
const circuit = job.circuits[0] ?? { id: '', name: '' };
const bare = { ...job, legs: [], schemes: [], readings: [] };
const existing = job.points.filter(({ status }) => status !== 'wanted').map(({ id }) => id);

const laid = (from: typeof job, now: readonly string[], isRing: boolean) =>
  edited(
    from,
    setPointsInOrder(circuit, {
      was: orderOfLegs(from, circuit),
      now,
      isRing,
      cable: null,
      legIds: [...now, 'back'].map((id) => `new-${id}`),
    }),
  );

describe('the order of the points by their cables', () => {
  it('is that of the ring, its spur left out', () => {
    const labels = orderOfLegs(job, circuit).map((id) => job.points.find((point) => point.id === id)?.label);
    expect(labels).toEqual(['R1', 'R2', 'R3', 'R4', 'R5', 'R6', 'R7', 'R8', 'R9']);
  });

  it('is empty where no cable leaves the board', () => {
    expect(orderOfLegs(bare, circuit)).toEqual([]);
  });

  it('is the order that the cables were made in', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(existing, { minLength: 1 }), fc.boolean(), (now, isRing) => {
        const made = laid(bare, now, isRing);
        expect(orderOfLegs(made, circuit)).toEqual(now);
        expect(made.legs).toHaveLength(now.length + (isRing ? 1 : 0));
        expect(faultsOf(made)).toEqual([]);
      }),
    );
  });

  it('made again over other cables keeps the legs between the same neighbours and the spur', () => {
    const order = orderOfLegs(job, circuit);
    const again = laid(job, order, true);
    expect(again.legs).toEqual(job.legs);
    const swapped = [...order.slice(2, 3), ...order.slice(0, 2), ...order.slice(3)];
    const changed = laid(job, swapped, true);
    expect(orderOfLegs(changed, circuit)).toEqual(swapped);
    const ids = new Set(changed.legs.map(({ id }) => id));
    const kept = job.legs.filter(({ id }) => ids.has(id));
    // Of ten legs round the ring three are cut: A–1, 2–3 and 3–4; the spur stays.
    expect(job.legs.length - kept.length).toBe(3);
  });

  it('comes to an end where every point has a cable to every other', () => {
    const legs = existing.flatMap((from, index) =>
      [...existing.slice(index + 1).map((point) => ({ point })), { origin: circuit.id }].map((to, at) => ({
        id: `leg-${index}-${at}`,
        circuit: circuit.id,
        from: { point: from },
        to,
      })),
    );
    const order = orderOfLegs({ legs }, circuit);
    expect(new Set(order).size).toBe(order.length);
    expect(order.length).toBeGreaterThan(0);
  });
});
