import { describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { nextPlate, platesInTurn } from '../../../ui/elements/as-found/next-point.ts';
import { orderOfLegs } from '../../../ui/elements/as-found/order-of-legs.ts';
import { roomOfPlace } from '../../../ui/elements/as-found/room-of-place.ts';

describe.each(demoNames)('going from plate to plate in %s', (name) => {
  const job = demoJob(name);
  const plan = buildPlan(job);

  it('comes to every plate that was found once, and to nothing else', () => {
    const found = job.points.filter(({ status, kind }) => status !== 'wanted' && kind !== 'joint');
    const passed: string[] = [];
    for (let at = platesInTurn(job, plan)[0] ?? null; at !== null; at = nextPlate(job, plan, at.id))
      passed.push(at.id);
    expect(passed.toSorted()).toEqual(found.map(({ id }) => id).toSorted());
  });

  it('follows the cable of each circuit', () => {
    const turn = platesInTurn(job, plan).map(({ id }) => id);
    for (const circuit of job.circuits) {
      const order = orderOfLegs(job, circuit).filter((id) => turn.includes(id));
      expect(turn.filter((id) => order.includes(id))).toEqual(order);
    }
  });

  it('goes room by room where no cable is known', () => {
    const bare = { ...job, legs: [] };
    const rooms = platesInTurn(bare, plan).map(({ place }) => roomOfPlace(plan, place));
    const changes = rooms.filter((room, i) => room !== rooms[i - 1]);
    expect(new Set(changes).size).toBe(changes.length);
  });
});

it('comes to nothing after a point that is none of these', () => {
  const job = demoJob('saltglass-row');
  expect(nextPlate(job, buildPlan(job), 'w1-living1')).toBeNull();
});
