import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import type { PlanWall } from '#engine/plan/plan.ts';
import type { PlanPoint } from '#engine/plan/plane.ts';
import { jointSpots } from '#engine/schemes/search/attachments.ts';
import { searchGround } from '#engine/schemes/search/search-ground.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { workHouse } from '#engine/schemes/work-scheme.ts';
import { houseWays } from '#engine/ways/house-ways.ts';
import { isMasonry } from '#engine/ways/lay-in-wall.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Segment } from '#engine/ways/run.ts';
import { type DemoName, demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';

const library = demoLibrary();
const tariff = tariffOf(library);

const houseFor = (name: DemoName) => workHouse(demoJob(name), tariff, defaultLengthAllowances);

/** True for a place within a wall's thickness, clear of its faces. */
function isInWall({ wall, direction, leftNormal, lengthMm }: PlanWall, at: PlanPoint): boolean {
  const [x, y] = [at[0] - wall.from[0], at[1] - wall.from[1]];
  const along = x * direction[0] + y * direction[1];
  const off = x * leftNormal[0] + y * leftNormal[1];
  return along > 2 && along < lengthMm - 2 && Math.abs(off) < wall.thicknessMm / 2 - 2;
}

const walked = ({ from, to }: Segment): readonly PlanPoint[] =>
  Array.from(
    { length: 101 },
    (_, i) =>
      [
        from.at[0] + ((to.at[0] - from.at[0]) * i) / 100,
        from.at[1] + ((to.at[1] - from.at[1]) * i) / 100,
      ] as unknown as PlanPoint,
  );

describe('ways under floors', () => {
  const { plan } = houseFor('saltglass-row');
  const placed = [...plan.positionOfPoint].map(([id, position]) => ({ id, position, mount: null }));
  const ways = houseWays(plan, tariff);
  const pairs = placed.flatMap((from, i) => placed.slice(i + 1).map((to) => ({ from, to })));

  it('go through a brick wall by a hole, though they come down on its face', () => {
    const [r7, w4] = ['r7-dining2', 'w4-boiler1'].map((id) => placed.find((one) => one.id === id));
    if (r7 === undefined || w4 === undefined) throw new Error('not placed');
    const media = ways.way(r7, w4, 'pence')?.segments.map(({ medium, wallId }) => `${medium} ${wallId}`);
    expect(media).toContain('through-wall gf-back-02');
  });

  it('never lie in the thickness of a masonry wall, between any two points of the house', () => {
    expect(pairs.length).toBeGreaterThan(80);
    const faults = pairs.flatMap(({ from, to }) =>
      (ways.way(from, to, 'pence')?.segments ?? [])
        .filter(({ medium, direction }) => medium.startsWith('void-') && direction === 'horizontal')
        .flatMap((segment) => {
          const own = [...plan.wallById.values()].filter(
            (wall) => wall.storeyId === segment.storeyId && isMasonry(wall),
          );
          const hit = own.find((wall) => walked(segment).some((at) => isInWall(wall, at)));
          return hit === undefined ? [] : [`${from.id} to ${to.id}: under ${hit.wall.id}`];
        }),
    );
    expect(faults).toEqual([]);
  });
});

describe('joints on surfaces', () => {
  const house = houseFor('quarrel-court');
  const ground = searchGround(house, library, { ways: waysInHouse(house, library) });
  const spotsOf = (legId: string) => jointSpots(ground, legId).map(({ end }) => end.position);

  it('stand on a wall, at corners of the channel as well, and not under the middle of a ceiling', () => {
    for (const { id } of house.job.legs)
      for (const position of spotsOf(id)) expect([id, position.onWall !== undefined]).toEqual([id, true]);
    // The corner at which the cable comes through the wall from C1 is on the face in the bedroom.
    const corner = spotsOf('leg-c01c02').find(({ at }) => at[0] === 5300 && at[1] === 3600);
    expect(corner?.onWall).toMatchObject({ wallId: 'fl-hall-02', side: 'left' });
  });

  it('stand where channels meet, not half way up an upright', () => {
    // C7 to the board goes up 2 m of wall: no box between the skirting and the ceiling.
    const heights = spotsOf('leg-c07-cu').map(({ heightMm }) => heightMm);
    expect(heights.length).toBeGreaterThan(0);
    expect(heights.filter((mm) => mm > 300 && mm < 2300)).toEqual([]);
  });

  it('are led to along walls: no channel of a found way hangs in the air', () => {
    const { schemes } = findSchemes(demoJob('quarrel-court'), library);
    const loose = schemes.flatMap(({ scheme, estimate }) =>
      estimate.worked.runs
        .flatMap(({ segments }) => segments)
        .filter(({ medium, wallId }) => medium.startsWith('surface-') && wallId === null)
        .map(({ from, to }) => `${scheme.name}: ${from.at} to ${to.at}`),
    );
    expect(schemes.length).toBeGreaterThan(40);
    expect(loose).toEqual([]);
  });
});
