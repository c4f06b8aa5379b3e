import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cornerDistances } from '#engine/plan/corners.ts';
import type { Plan } from '#engine/plan/plan.ts';
import type { Position } from '#engine/plan/plane.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { voidBelow } from '#engine/plan/voids.ts';
import { plainRoute } from '#engine/ways/find-run.ts';
import { joistsCrossed } from '#engine/ways/joists.ts';
import { CHASE_DEPTH_MM } from '#engine/ways/lay-in-wall.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Segment } from '#engine/ways/run.ts';
import type { Place } from '#model/installation.ts';
import {
  door,
  fourWalls,
  planOf,
  room,
  solidFloor,
  storey,
  timberFloor,
} from '#tests/engine/plan/small-house.ts';
import { requestBetween } from '#tests/engine/ways/demo-houses.ts';

type OnWall = Extract<Place, { wall: string }>;

/**
 * BS 7671:2018 regulation 522.6.202: cable concealed in a wall less than 50 mm deep runs within 150 mm of the
 * top of the wall or of the angle of two adjoining walls, or straight horizontally or vertically to an
 * accessory. Figures from memory, agreeing with public guides to the regulation.
 */
const ZONE_MM = 150;

/** One room with a door and a window, and two places on its walls. */
const jobs = fc
  .record({
    widthMm: fc.integer({ min: 3000, max: 7000 }),
    core: fc.constantFrom('brick', 'timber-stud' as const),
    floor: fc.constantFrom(timberFloor, { ...timberFloor, joistsRunDeg: 90 }, solidFloor),
  })
  .map(({ widthMm, core, floor }) => {
    const { walls, sides } = fourWalls(widthMm, 4000, { more: { core } });
    const opened = walls.map((each) => {
      const window = door('win', 1000, { kind: 'window', widthMm: 1200, sillMm: 900, headMm: 2100 });
      if (each.id === 's') return { ...each, openings: [window] };
      return each.id === 'n' ? { ...each, openings: [door('d', 900)] } : each;
    });
    const upper = storey('ff', { floorLevelMm: 2725 });
    return planOf([storey('gf', { floor, walls: opened, rooms: [room('r', sides)] }), upper]);
  });
const places = fc
  .record({
    wall: fc.constantFrom('s', 'e', 'n', 'w'),
    alongMm: fc.integer({ min: 100, max: 3000 }),
    heightMm: fc.constantFrom(300, 450, 1100),
  })
  .map((place): OnWall => ({ ...place, side: 'left' }));

/** Straight up, down or sideways from one of the accessories, or wholly within 150 mm of the top or of a corner. */
function isInZone(plan: Plan, segment: Segment, ends: readonly Position[]): boolean {
  const inLine = ends.some((end) => {
    const onSameWall = end.onWall?.wallId === segment.wallId;
    const level = Math.abs(end.heightMm - segment.from.heightMm) < 1 && segment.direction === 'horizontal';
    const beside = Math.abs((end.onWall?.alongMm ?? 0) - (segment.from.onWall?.alongMm ?? -9)) < 1;
    return onSameWall && (level || (beside && segment.direction === 'vertical'));
  });
  const stops = [segment.from, segment.to];
  const heightMm = plan.storeyById.get('gf')?.storey.heightMm ?? 0;
  const atTop = stops.every((stop) => stop.heightMm >= heightMm - ZONE_MM);
  const atCorner = (['leftMm', 'rightMm'] as const).some((hand) =>
    stops.every(({ onWall }) => {
      const apartMm = onWall === undefined ? null : cornerDistances(plan, onWall)[hand];
      return apartMm !== null && apartMm <= ZONE_MM;
    }),
  );
  return inLine || atTop || atCorner;
}

describe('BS 7671 522.6.202, prescribed zones (from memory)', () => {
  it('hold every cable in a wall of a path that is not merely assumed', () => {
    fc.assert(
      fc.property(jobs, places, places, (plan, a, b) => {
        const request = requestBetween(plan, [a, b]);
        const { segments } = plainRoute(request);
        const inWalls = segments.filter(({ medium }) => medium === 'wall-chase' || medium === 'stud-cavity');
        fc.pre(inWalls.every(({ certainty }) => certainty === 'derived'));
        for (const segment of inWalls) expect(isInZone(plan, segment, [request.from, request.to])).toBe(true);
      }),
    );
  });
});

describe('Approved Document A (2004 with later amendments), chases in masonry (from memory)', () => {
  it('leaves a level chase in a 100 mm leaf within a sixth of its thickness, an upright one within a third', () => {
    // About 13 mm of two-coat plaster covers the masonry: common practice, no source.
    const intoMasonryMm = CHASE_DEPTH_MM - 13;
    expect(intoMasonryMm).toBeGreaterThan(0);
    expect(intoMasonryMm).toBeLessThanOrEqual(100 / 6);
    expect(intoMasonryMm).toBeLessThanOrEqual(100 / 3);
  });

  it('is shallower than the 50 mm of BS 7671 522.6.202, so that the zones and an RCD matter (from memory)', () => {
    expect(CHASE_DEPTH_MM).toBeLessThan(50);
  });
});

describe('BS 7671 522.6.201, cable through joists at least 50 mm from their top and bottom (from memory)', () => {
  it.each([150, 175, 200, 225])(
    'holds at the level of cable in a void of %i mm joists under boards',
    (depthMm) => {
      const boardsMm = 22;
      const plan = planOf([storey('gf', { floor: { ...timberFloor, joistDepthMm: depthMm, voidMm: 450 } })]);
      const level = voidBelow(plan, {
        storeyId: 'gf',
        at: planPoint(0, 0),
        heightMm: 300,
        levelMm: 300,
      })?.levelMm;
      const belowTopMm = -(level ?? 0) - boardsMm;
      expect(belowTopMm).toBeGreaterThanOrEqual(50);
      expect(depthMm - belowTopMm).toBeGreaterThanOrEqual(50);
    },
  );
});

describe('joists of a floor 4 m wide at 400 mm centres', () => {
  it('are nine between the walls: the spaces less one (arithmetic, no source)', () => {
    expect(joistsCrossed(timberFloor, planPoint(0, 0), planPoint(0, 4000))).toBe(9);
  });
});

describe('tails and slack (common practice, no source)', () => {
  it('leave 150 to 300 mm at an accessory or a joint and 500 to 1000 mm at a board', () => {
    const { accessoryEndMm, jointEndMm, boardEndMm, slackMm } = defaultLengthAllowances;
    for (const mm of [accessoryEndMm, jointEndMm]) {
      expect(mm).toBeGreaterThanOrEqual(150);
      expect(mm).toBeLessThanOrEqual(300);
    }
    expect(boardEndMm).toBeGreaterThanOrEqual(500);
    expect(boardEndMm).toBeLessThanOrEqual(1000);
    expect(slackMm).toBe(300);
  });
});
