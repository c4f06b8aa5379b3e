import { describe, expect, it } from 'vitest';
import { circuitShapes } from '#engine/circuit/circuit-shapes.ts';
import { foundNetwork } from '#engine/circuit/found-network.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { roomOfPosition } from '#engine/plan/surroundings.ts';
import { houseOf } from './house-of.ts';
import { spursOf } from './spurs-of.ts';

describe('houseOf', () => {
  it('is the same house for the same seed, and another for another', () => {
    const size = { rooms: 10, wanted: 4 };
    expect(houseOf({ seed: 3, ...size })).toEqual(houseOf({ seed: 3, ...size }));
    expect(houseOf({ seed: 4, ...size })).not.toEqual(houseOf({ seed: 3, ...size }));
  });

  it.each([
    [4, 1],
    [10, 1],
    [20, 2],
    [40, 4],
    [80, 8],
  ])('of %i rooms has rooms that close, an outlet in each, and %i whole rings', (rooms, rings) => {
    const job = houseOf({ seed: rooms, rooms, wanted: 4 });
    const plan = buildPlan(job);
    const areas = [...plan.roomById.values()].map(({ areaMm2 }) => areaMm2);
    expect(areas).toHaveLength(rooms);
    expect(Math.min(...areas)).toBeGreaterThan(5e6);
    const found = job.points.filter(({ status }) => status === 'existing');
    const roomIds = found.map(({ id }) => roomOfPosition(plan, plan.positionOfPoint.get(id))?.room.id);
    expect(new Set(roomIds).size).toBe(rooms);
    const shapes = [...circuitShapes(job, foundNetwork(job)).values()];
    expect(shapes.map(({ shape }) => shape)).toEqual(Array.from({ length: rings }, () => 'ring'));
    expect(job.points.filter(({ status }) => status === 'wanted')).toHaveLength(4);
  });

  it('has as many outlets as are asked for, on rings of ten or so, and a spur to each wanted point from one of its own', () => {
    const job = houseOf({ seed: 31, rooms: 10, outlets: 74, wanted: 6 });
    expect(job.points).toHaveLength(80);
    const shapes = [...circuitShapes(job, foundNetwork(job)).values()];
    expect(shapes.map(({ shape }) => shape)).toEqual(Array.from({ length: 7 }, () => 'ring'));
    const { connections } = spursOf(job);
    expect(connections.map((each) => 'to' in each && each.to)).toEqual(
      job.points.filter(({ status }) => status === 'wanted').map(({ id }) => id),
    );
    expect(new Set(connections.map((each) => JSON.stringify('from' in each && each.from))).size).toBe(6);
  });
});
