import { describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { positionOfPlace } from '#engine/plan/position-of-place.ts';
import { door, fourWalls, movedStoreys, planOf, point, room, storey, wall } from './small-house.ts';

const box = fourWalls(4000, 3000);
const ground = storey('gf', { walls: box.walls, rooms: [room('r', box.sides)] });

describe('buildPlan', () => {
  it('orders storeys from the lowest level and knows what is above and below', () => {
    const plan = planOf([
      storey('ff', { floorLevelMm: 2725 }),
      storey('gf'),
      storey('cellar', { floorLevelMm: -2200 }),
    ]);
    expect(plan.storeys.map((each) => each.storey.id)).toEqual(['cellar', 'gf', 'ff']);
    expect(plan.storeyById.get('gf')).toMatchObject({ aboveId: 'ff', belowId: 'cellar' });
    expect(plan.storeyById.get('ff')).toMatchObject({ aboveId: null, belowId: 'gf' });
  });

  it('keeps storeys on one level beside each other', () => {
    const plan = planOf([storey('main'), storey('annexe'), storey('ff', { floorLevelMm: 2700 })]);
    expect(plan.storeyById.get('annexe')).toMatchObject({ aboveId: 'ff', belowId: null });
    expect(plan.storeyById.get('main')).toMatchObject({ aboveId: 'ff', belowId: null });
  });

  it('gives a wall its length and the direction out of its left face', () => {
    const built = planOf([storey('gf', { walls: [wall('w', [0, 0], [0, 3000])] })]).wallById.get('w');
    expect(built?.lengthMm).toBe(3000);
    expect(built?.direction).toEqual([0, 1]);
    expect(built?.leftNormal).toEqual([-1, 0]);
  });

  it('gives a wall of no length a direction, so that nothing built on it is undefined', () => {
    const built = planOf([storey('gf', { walls: [wall('w', [5, 5], [5, 5])] })]).wallById.get('w');
    expect(built?.direction).toEqual([1, 0]);
  });

  it('outlines a room by the inner faces of its walls, whichever way they are listed or mirrored', () => {
    const reversed = storey('gf', { walls: box.walls, rooms: [room('r', box.sides.toReversed())] });
    for (const each of [ground, reversed, ...movedStoreys([ground], { mirror: true, byMm: [700, -90] })])
      expect(planOf([each]).roomById.get('r')?.areaMm2).toBeCloseTo(12e6, 6);
    expect(planOf([ground]).roomById.get('r')?.outline).toEqual([
      [0, 0],
      [4000, 0],
      [4000, 3000],
      [0, 3000],
    ]);
  });

  it('follows the step where two walls in one line differ in thickness', () => {
    const stepped = storey('gf', {
      walls: [
        wall('s', [-50, -50], [2000, -50]),
        wall('s2', [2000, -50], [4050, -50], { thicknessMm: 300 }),
        ...box.walls.slice(1),
      ],
      rooms: [room('r', [['s', 'left'], ['s2', 'left'], ...box.sides.slice(1)])],
    });
    expect(planOf([stepped]).roomById.get('r')?.areaMm2).toBeCloseTo(12e6 - 2000 * 100, 6);
  });

  it('has no outline for walls that do not close', () => {
    const open = storey('gf', { walls: box.walls, rooms: [room('r', box.sides.slice(0, 3))] });
    expect(planOf([open]).roomById.get('r')).toMatchObject({ outline: [], areaMm2: 0 });
  });

  it('has positions only for points and boards with a place', () => {
    const place = { storey: 'gf', at: [1, 2] as [number, number], heightMm: 300 };
    const plan = buildPlan({
      storeys: [ground],
      points: [point('a', place), point('b')],
      boards: [
        { id: 'cu', label: 'CU', place, rcds: [] },
        { id: 'cu2', label: 'CU 2', rcds: [] },
      ],
    });
    expect([...plan.positionOfPoint.keys()]).toEqual(['a']);
    expect([...plan.positionOfBoard.keys()]).toEqual(['cu']);
  });
});

describe('positionOfPlace', () => {
  const raised = storey('ff', {
    floorLevelMm: 2725,
    walls: [wall('w', [0, 0], [0, 3000], { openings: [door('d', 100)] })],
  });
  const plan = planOf([raised]);

  it('puts a place on a wall on the face, half the thickness off the centre line', () => {
    const spot = { wall: 'w', side: 'right', alongMm: 1200, heightMm: 450 } as const;
    expect(positionOfPlace(plan, spot)).toEqual({
      storeyId: 'ff',
      at: [50, 1200],
      heightMm: 450,
      levelMm: 3175,
      onWall: { wallId: 'w', side: 'right', alongMm: 1200 },
    });
    expect(positionOfPlace(plan, { ...spot, side: 'left' })?.at).toEqual([-50, 1200]);
  });

  it('takes a free place as it stands, below the floor too', () => {
    const free = positionOfPlace(plan, { storey: 'ff', at: [2900, 900], heightMm: -110 });
    expect(free).toEqual({ storeyId: 'ff', at: [2900, 900], heightMm: -110, levelMm: 2615 });
  });

  it('knows no position on a wall or storey that is not there', () => {
    expect(positionOfPlace(plan, { wall: 'x', side: 'left', alongMm: 0, heightMm: 0 })).toBeNull();
    expect(positionOfPlace(plan, { storey: 'x', at: [0, 0], heightMm: 0 })).toBeNull();
  });
});
