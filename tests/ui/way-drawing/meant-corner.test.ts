import { describe, expect, it } from 'vitest';
import { type PlanPoint, planPoint } from '#engine/plan/plane.ts';
import { demoEstimate, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { keyedCorner } from '../../../ui/way-drawing/meant-corner.ts';
import { wallLines, whyNotThere } from '../../../ui/way-drawing/void-lines.ts';
import type { DrawnWay } from '../../../ui/way-drawing/way-draft.ts';
import { begin, cornerAt, found, ledOn, leg, meant } from './draw.ts';

const start = begin(leg('leg-r03r04'));
const under = ledOn(start, [{ do: 'move', by: 'down' }]);
const [x, y] = under.here.at;
const so = (way: DrawnWay) => ({
  plan: found.plan,
  here: way.here,
  end: way.to,
  storeyId: way.here.storeyId,
});

describe('the corner that a hand means under a floor', () => {
  it('holds to the way joists run, and says along or across', () => {
    const along = meant(under, [x - 1200, y + 40]);
    expect(along.at).toEqual([x - 1200, y]);
    expect(along.words).toMatch(/ (along|across) the joists/);
    const other = meant(under, [x - 40, y + 900]);
    expect(other.words).toMatch(/ (along|across) the joists/);
    expect(other.words.includes('along')).not.toBe(along.words.includes('along'));
  });

  it('holds to the end, and to faces of walls', () => {
    const [endX, endY] = under.to.at;
    expect(meant(under, [endX - 60, endY + 50]).at).toEqual([endX, endY]);
    const line = wallLines(found.plan, under.here.storeyId).find(
      ({ direction, lengthMm }) => Math.abs(direction[0]) > 0.9 && (lengthMm ?? 0) > 1500,
    );
    const [lineX, lineY] = line?.through ?? [0, 0];
    const sign = line?.direction[0] ?? 1;
    const { at } = meant(under, [lineX + sign * 700, lineY + 30], { reachMm: 60 });
    expect(Math.abs(at[1] - lineY)).toBeLessThan(61);
  });

  it('is where the hand is, in whole 10 mm, away from all these', () => {
    expect(meant(under, [x - 1204, y - 1003], { reachMm: 1 }).at).toEqual([
      Math.round((x - 1204) / 10) * 10,
      Math.round((y - 1003) / 10) * 10,
    ]);
  });

  it('is nowhere outside the house, nor beyond it', () => {
    expect(meant(under, [x + 5000, y]).whyNot).toBe('that is outside the house');
    expect(meant(under, [x - 20_000, y]).whyNot).toBe('that is outside the house');
  });

  it('is not in a stairwell, nor past one', () => {
    for (const name of demoNames) {
      const { worked } = demoEstimate(name).asFound;
      for (const { storey } of worked.plan.storeys)
        for (const outline of storey.stairwells) {
          const space = { kind: 'floor', storeyId: storey.id, levelMm: storey.floorLevelMm - 100 } as const;
          const middle = [0, 1].map(
            (i) => outline.reduce((sum, at) => sum + (at[i] ?? 0), 0) / outline.length,
          ) as unknown as PlanPoint;
          expect(whyNotThere(worked.plan, space, middle, middle)).toMatch(/stairwell|outside/);
        }
    }
  });

  it('is brought to its place by keys: steps, fine steps, on to the next line, to the end', () => {
    const place = { at: planPoint(x, y), way: [1, 0] as const };
    const left = keyedCorner(so(under), place, 'ArrowLeft', false);
    expect(left?.at).toEqual([x - 50, y]);
    expect(keyedCorner(so(under), place, 'ArrowUp', true)?.at).toEqual([x, y + 10]);
    expect(keyedCorner(so(under), place, 'End', false)?.at).toEqual(under.to.at);
    const next = left && keyedCorner(so(under), left, ']', false);
    expect(next?.at[0]).toBeLessThan(x - 60);
    expect(next?.at[1]).toBe(y);
    expect(keyedCorner(so(under), place, 'q', false)).toBeNull();
  });
});

describe('the corner that a hand means on a wall', () => {
  it('goes along the wall at the height where it is, and lies in that wall', () => {
    const [fromX, fromY] = start.here.at;
    const way = cornerAt(start, [fromX, fromY + 300]);
    expect(way.via).toMatchObject([
      { heightMm: start.here.heightMm, wall: start.here.onWall?.wallId, side: start.here.onWall?.side },
    ]);
    const pinned = way.segments.filter(({ certainty }) => certainty === 'pinned');
    expect(pinned.map(({ medium }) => medium)).not.toContain('surface-clipped');
  });

  it('goes round the corners of the room, each part in its own wall', () => {
    // Above doors and windows, so that nothing is in the way.
    const high = ledOn(start, [{ do: 'height', heightMm: 2350 }]);
    const room = found.plan.roomById.get(
      [...found.plan.roomById.values()].find(({ room: { name } }) => name === 'Living room')?.room.id ?? '',
    );
    const outline = room?.outline ?? [];
    const middle = [0, 1].map(
      (i) => outline.reduce((sum, at) => sum + (at[i] ?? 0), 0) / outline.length,
    ) as unknown as readonly [number, number];
    const lowestY = Math.min(...outline.map(([, atY]) => atY));
    const way = cornerAt(high, [middle[0], lowestY]);
    expect(way.via.length).toBeGreaterThan(2);
    const pinned = way.segments.filter(({ certainty }) => certainty === 'pinned');
    expect(new Set(pinned.map(({ wallId }) => wallId)).size).toBeGreaterThan(1);
    for (const { medium, direction } of pinned) {
      expect(medium).toMatch(/^(wall-chase|stud-cavity|surface-channel)$/);
      expect(direction).not.toBe('sloping');
    }
    // One step of the hand: taken back as one.
    expect(ledOn(way, [{ do: 'take-back' }]).steps).toEqual(high.steps);
  });

  it('does not go through a door, a window or a breast, and says so', () => {
    const { openings, answers } = everyWayRound();
    expect(openings).toBeGreaterThan(0);
    expect(answers.some((one) => /is in the way at this height$/.test(one))).toBe(true);
  });

  it('stays on the storey where the cable is', () => {
    const other = found.plan.storeys.find(({ storey }) => storey.id !== start.here.storeyId)?.storey.id;
    expect(meant(start, start.to.at, { storeyId: other ?? '' }).whyNot).toMatch(/show that storey/);
  });

  it('is brought round the room by keys', () => {
    let place: { at: typeof start.here.at; way: readonly [number, number] } = {
      at: start.here.at,
      way: [1, 0],
    };
    const places = new Set<string>();
    for (let i = 0; i < 8; i++) {
      place = keyedCorner(so(start), place, ']', false) ?? place;
      places.add(place.at.map(Math.round).join(' '));
    }
    expect(places.size).toBeGreaterThan(3);
    expect(keyedCorner(so(start), { at: start.here.at, way: [1, 0] }, 'ArrowUp', false)?.at[1]).toBeCloseTo(
      start.here.at[1] + 50,
      0,
    );
  });
});

/** What is said of ways at the height of an outlet to every half metre of the storey's plan. */
function everyWayRound(): { readonly openings: number; readonly answers: readonly string[] } {
  const answers: string[] = [];
  for (let atX = 0; atX < 6000; atX += 500)
    for (let atY = 0; atY < 10_000; atY += 500) answers.push(meant(start, [atX, atY]).whyNot ?? '');
  const walls = [...found.plan.wallById.values()].filter(({ storeyId }) => storeyId === start.here.storeyId);
  return { openings: walls.reduce((sum, { wall }) => sum + wall.openings.length, 0), answers };
}
