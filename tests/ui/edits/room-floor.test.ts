import { describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { surroundingsAt } from '#engine/plan/surroundings.ts';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';
import { setRoomFloor, setRoomFloorCertainty, setRoomFloorFact } from '../../../ui/edits/room-floor.ts';
import type { JobEdit } from '../../../ui/job-events.ts';
import { demoJob } from '../../engine/demo-jobs/demo-estimates.ts';

const changed = (job: Job, edit: JobEdit): Job => {
  const next = structuredClone(job);
  edit.change(next);
  return next;
};
const partsOf = (job: Job) => {
  const [storey] = job.storeys;
  const room = storey?.rooms.find(({ name }) => name === 'Living room');
  if (storey === undefined || room === undefined) throw new Error('No living room.');
  return { storey, room };
};

describe('the floor of a room', () => {
  const job = structuredClone(demoJob('saltglass-row'));
  const { storey, room } = partsOf(job);
  const own = changed(job, setRoomFloor(storey, room, true));

  it('begins as the storey has it, all of it assumed, and is what the engine goes by there', () => {
    const { certainty, ...facts } = partsOf(own).room.floor ?? {};
    const { certainty: _theirs, ...ofStorey } = storey.floor;
    expect(facts).toEqual(ofStorey);
    expect(certainty).toEqual(Object.fromEntries(Object.keys(ofStorey).map((fact) => [fact, 'assumed'])));
    const solid = changed(own, setRoomFloorFact(storey, room, 'build', 'solid'));
    const [x, y] = (buildPlan(solid).roomById.get(room.id)?.outline ?? []).reduce(
      ([ax, ay], [bx, by], _, all) => [ax + bx / all.length, ay + by / all.length],
      [0, 0],
    );
    const around = surroundingsAt(buildPlan(solid), {
      storeyId: storey.id,
      at: planPoint(x, y),
      heightMm: 0,
      levelMm: 0,
    });
    expect(around?.floor.build).toBe('solid');
    expect(readJob(JSON.parse(JSON.stringify(solid))).ok).toBe(true);
  });

  it('counts as seen what is set, and is marked otherwise where somebody says so', () => {
    const tiled = changed(own, setRoomFloorFact(storey, room, 'covering', 'tile'));
    expect(partsOf(tiled).room.floor?.covering).toBe('tile');
    expect(partsOf(tiled).room.floor?.certainty?.covering).toBeUndefined();
    const told = changed(tiled, setRoomFloorCertainty(storey, room, 'covering', 'measured'));
    expect(partsOf(told).room.floor?.certainty?.covering).toBe('measured');
    expect(partsOf(job).storey.floor).toEqual(storey.floor);
  });

  it('is the storey’s again when it is taken back', () => {
    expect(changed(own, setRoomFloor(storey, room, false))).toEqual(job);
    expect(changed(job, setRoomFloorFact(storey, room, 'covering', 'tile'))).toEqual(job);
  });
});
