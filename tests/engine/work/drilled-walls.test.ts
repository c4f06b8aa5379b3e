import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DRILLED_SAID, drilledWallRows } from '#drawing/work/drilled-wall-words.ts';
import { bitMm, drilledWalls } from '#engine/work/drilled-walls.ts';
import { edited } from '../circuit/any-edited-job.ts';
import { demoEstimate, demoNames, schemeOf } from '../demo-jobs/demo-estimates.ts';
import { firstWorked } from './worked-schemes.ts';

describe.each(
  demoNames.flatMap((name) => demoEstimate(name).schemes.map((scheme) => [name, scheme] as const)),
)('the walls that are drilled for %s', (_, scheme) => {
  const holes = drilledWalls(scheme.worked);

  it('are as many as labour counts, each with a mark of its own and the cables through it', () => {
    const counted = scheme.labour.find(({ task }) => task === 'drill-wall')?.quantity ?? 0;
    expect(holes.length).toBe(counted);
    expect(new Set(holes.map(({ mark }) => mark)).size).toBe(holes.length);
    for (const { cables } of holes) expect(cables).not.toEqual([]);
    expect(drilledWallRows(scheme.worked).flatMap(({ rows }) => rows).length).toBe(holes.length);
  });
});

describe('where a wall is drilled', () => {
  it('is told on both faces, by height and the nearer corner: from the hall into the kitchen', () => {
    const { worked } = schemeOf(demoEstimate('fernlow-close'), 'new-radial');
    // The wall between them begins at x 3750 and the hole is 125 mm along it, 100 mm of block thick: by the plan as drawn.
    expect(drilledWalls(worked)).toMatchObject([
      { mark: 'D1', heightMm: 1100, thicknessMm: 100, core: 'block', cables: ['K1'], bitMm: 16 },
    ]);
    const [hole] = drilledWalls(worked);
    expect(hole?.faces.map(({ roomName }) => roomName)).toEqual(['Hall', 'Kitchen-diner']);
    // In the hall (x from 3800) the hole at x 3875 is 75 mm from the left-hand corner.
    expect(hole?.faces[0].corners.leftMm).toBeCloseTo(75, 6);
    expect(drilledWallRows(worked)[0]?.rows[0]).toMatchObject({
      where: expect.stringMatching(/^1100 mm above the floor, 75 mm from the left-hand corner/),
      what: '16 mm hole through 100 mm of block',
      note: expect.stringMatching(/^comes out in Kitchen-diner/),
    });
    expect(DRILLED_SAID).toMatch(/both faces are looked at/);
  });

  it('is told under the floor where the cable goes there', () => {
    const { worked } = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');
    expect(drilledWallRows(worked)[0]?.rows[0]?.where).toMatch(/^110 mm under the floor/);
  });

  it('is at no distance less than nought, of any job', () => {
    fc.assert(
      fc.property(edited, (job) => {
        for (const { faces } of drilledWalls(firstWorked(job)))
          for (const { corners, door } of faces)
            for (const mm of [corners.leftMm, corners.rightMm, door?.mm ?? null])
              if (mm !== null) expect(mm).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 40 },
    );
  });
});

describe('the bit for cables through a wall', () => {
  it('is a joist’s for one, and takes several lying on each other', () => {
    const cable = { lineMm2: 2.5 };
    expect(bitMm([cable])).toBe(16);
    // Two of 10.3 × 6 mm (BS 6004, as makers print it): across the corners √(10.3² + 12²) = 15.8 mm, and play.
    expect(bitMm([cable, cable])).toBe(20);
    // Three: √(10.3² + 18²) = 20.7 mm, and play.
    expect(bitMm([cable, cable, cable])).toBe(25);
    expect(bitMm([{ lineMm2: 1 }])).toBe(12);
  });
});
