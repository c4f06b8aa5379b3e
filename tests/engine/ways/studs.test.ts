import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Position } from '#engine/plan/plane.ts';
import { planPoint } from '#engine/plan/plane.ts';
import { plainRoute } from '#engine/ways/find-run.ts';
import { studsCrossed, studsOnWay } from '#engine/ways/studs.ts';
import type { Wall } from '#model/building.ts';
import { door, fourWalls, planOf, room, storey } from '#tests/engine/plan/small-house.ts';
import { requestBetween, tariff } from './demo-houses.ts';

/** So cheap to drill that cable goes level in the wall. */
const cheapStuds = { tariff: { ...tariff, stud: { millipence: 0, minutes: 0, mess: 0 } } };

const stud = { core: 'timber-stud' } as const;
const along = fc.integer({ min: 0, max: 9000 });

describe('studsCrossed', () => {
  it('counts what a tape along the wall would: every 600 from its start, the further end with it', () => {
    fc.assert(
      fc.property(along, along, (fromMm, toMm) => {
        let count = 0;
        for (let mm = Math.min(fromMm, toMm) + 1; mm <= Math.max(fromMm, toMm); mm += 1)
          if (mm % 600 === 0) count += 1;
        expect(studsCrossed(stud, fromMm, toMm)).toBe(count);
      }),
    );
  });

  it('adds up over the parts of a path, also cut at a stud, and is the same from either end', () => {
    const cut = fc.oneof(
      along,
      fc.integer({ min: 0, max: 15 }).map((nth) => nth * 600),
    );
    fc.assert(
      fc.property(cut, cut, cut, (one, other, another) => {
        const [a = 0, b = 0, c = 0] = [one, other, another].toSorted((x, y) => x - y);
        const whole = studsCrossed(stud, a, c);
        expect(studsCrossed(stud, a, b) + studsCrossed(stud, b, c)).toBe(whole);
        expect(studsCrossed(stud, c, a)).toBe(whole);
      }),
    );
  });

  it('takes a place a hair off a stud for one at it', () => {
    expect(studsCrossed(stud, 0, 600 - 1e-9)).toBe(1);
    expect(studsCrossed(stud, 600 - 1e-9, 1100)).toBe(0);
  });

  it.each(['brick', 'block', 'concrete', 'open'] as const)('counts none in %s', (core) => {
    expect(studsCrossed({ core }, 0, 5000)).toBe(0);
  });

  it('is the same for metal studs', () => {
    expect(studsCrossed({ core: 'metal-stud' }, 100, 2000)).toBe(3);
  });
});

describe('the studs on a way', () => {
  const houseOf = (more: Partial<Wall> = {}) => {
    const box = fourWalls(5000, 4000, { more: { ...stud, ...more } });
    const walls = box.walls.map((each) =>
      each.id === 'e' ? { ...each, openings: [door('d', 1400)] } : each,
    );
    return planOf([storey('gf', { walls, rooms: [room('r', box.sides)] })]);
  };
  const onWall = (alongMm: number, heightMm = 1100) =>
    ({ wall: 's', side: 'left', alongMm, heightMm }) as const;
  function segmentsOf(
    from: ReturnType<typeof onWall>,
    to: ReturnType<typeof onWall>,
    more: Partial<Parameters<typeof plainRoute>[0]> = {},
  ) {
    return plainRoute(requestBetween(houseOf(), [from, to], more)).segments;
  }

  it('are counted where cable lies level behind the board', () => {
    // Studs at 600 and 1200 between 500 and 1300.
    expect(segmentsOf(onWall(500), onWall(1300), cheapStuds)).toMatchObject([
      { medium: 'stud-cavity', direction: 'horizontal', studsCrossed: 2 },
    ]);
    expect(segmentsOf(onWall(650), onWall(1150), cheapStuds)[0]).toMatchObject({ studsCrossed: 0 });
  });

  it('are none upright, on the surface and in masonry', () => {
    expect(segmentsOf(onWall(700, 300), onWall(700, 1100))).toMatchObject([
      { medium: 'stud-cavity', direction: 'vertical', studsCrossed: 0 },
    ]);
    const surface = segmentsOf(onWall(500), onWall(1300), { fromMount: 'surface', toMount: 'surface' });
    expect(surface.reduce((sum, segment) => sum + segment.studsCrossed, 0)).toBe(0);
    const brick = plainRoute(requestBetween(houseOf({ core: 'brick' }), [onWall(500), onWall(1300)]));
    expect(brick.segments[0]).toMatchObject({ medium: 'wall-chase', studsCrossed: 0 });
  });

  it('are counted where the stretch is pinned by hand', () => {
    const via = [
      { storey: 'gf', at: [1850, 0] as [number, number], heightMm: 1100, wall: 's', side: 'left' as const },
    ];
    // The wall starts 50 mm before the room: x 1850 is 1900 along it, past the studs at 600, 1200 and 1800.
    expect(segmentsOf(onWall(500), onWall(1950), { via })[0]).toMatchObject({
      certainty: 'pinned',
      medium: 'stud-cavity',
      studsCrossed: 3,
    });
  });

  it('are counted on the level stretch past a door', () => {
    const place = { wall: 'e', side: 'left', alongMm: 1700, heightMm: 2200 } as const;
    const { segments } = plainRoute(
      requestBetween(houseOf(), [place, { storey: 'gf', at: [2000, 2000], heightMm: -110 }]),
    );
    const level = segments.find(
      ({ medium, direction }) => medium === 'stud-cavity' && direction === 'horizontal',
    );
    const [a, b] = [level?.from.onWall?.alongMm ?? 0, level?.to.onWall?.alongMm ?? 0];
    expect(Math.abs(a - b)).toBeGreaterThan(600);
    expect(level?.studsCrossed).toBe(studsCrossed(stud, a, b));
    expect(level?.studsCrossed).toBeGreaterThan(0);
  });

  it('are none between places that are not both on the wall', () => {
    const wall = houseOf().wallById.get('s');
    const spot: Position = { storeyId: 'gf', at: planPoint(0, 0), heightMm: 300, levelMm: 300 };
    const on = (alongMm: number, wallId = 's'): Position => ({
      ...spot,
      onWall: { wallId, side: 'left', alongMm },
    });
    expect(studsOnWay(wall, 'stud-cavity', [on(0), on(1300)])).toBe(2);
    expect(studsOnWay(wall, 'stud-cavity', [on(0), on(1300, 'e')])).toBe(0);
    expect(studsOnWay(wall, 'stud-cavity', [spot, on(1300)])).toBe(0);
    expect(studsOnWay(wall, 'surface-channel', [on(0), on(1300)])).toBe(0);
    expect(studsOnWay(undefined, 'stud-cavity', [on(0), on(1300)])).toBe(0);
  });
});
