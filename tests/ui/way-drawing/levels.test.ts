import { describe, expect, it } from 'vitest';
import { demoEstimate, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { isDrawnOn, levelOf, levelWords, movesFrom } from '../../../ui/way-drawing/levels.ts';
import { positionOfWaypoint } from '../../../ui/way-drawing/way-draft.ts';
import { begin, found, leg } from './draw.ts';

describe('up, down and through a wall', () => {
  it.each(demoNames)('either can be done or says why not, plumb or straight through, in %s', (name) => {
    const { plan } = demoEstimate(name).asFound.worked;
    let done = 0;
    for (const here of plan.positionOfPoint.values())
      for (const [key, { words, waypoint, whyNot }] of Object.entries(movesFrom(plan, here, here))) {
        expect(words).not.toBe('');
        expect(waypoint === null).toBe(whyNot !== null);
        const there = waypoint && positionOfWaypoint(plan, waypoint);
        if (there == null) continue;
        done++;
        if (key === 'through') expect(there.heightMm).toBe(here.heightMm);
        else expect(Math.hypot(there.at[0] - here.at[0], there.at[1] - here.at[1])).toBeLessThan(1);
        expect(Math.sign(there.levelMm - here.levelMm)).toBe(key === 'up' ? 1 : key === 'down' ? -1 : 0);
        expect(levelOf(plan, there).kind).toBe(key === 'through' ? 'room' : 'void');
      }
    if (plan.positionOfPoint.size > 0) expect(done).toBeGreaterThan(0);
  });

  it('lead back into the wall that they came from, at the height of the end', () => {
    const { from, to } = begin(leg('leg-r03r04'));
    const down = positionOfWaypoint(found.plan, movesFrom(found.plan, from, to).down.waypoint ?? never());
    expect(down && levelWords(found.plan, down)).toBe('under the floor of Ground floor');
    const back = movesFrom(found.plan, down ?? from, to).up;
    expect(back.words).toBe('Up in the wall of Living room');
    expect(back.waypoint).toMatchObject({ heightMm: to.heightMm, wall: from.onWall?.wallId });
  });

  it('lead over storeys: above a ceiling, and on from there into the room above or below', () => {
    const { from, to } = begin(leg('leg-r03r04'));
    const up = positionOfWaypoint(found.plan, movesFrom(found.plan, from, to).up.waypoint ?? never());
    if (up === null) throw new Error('There is a void above.');
    expect(levelWords(found.plan, up)).toBe('under the floor of First floor');
    const { up: on, down } = movesFrom(found.plan, up, to);
    expect(on.waypoint?.storey).toBe(up.storeyId);
    expect(down.waypoint?.storey).toBe(from.storeyId);
    for (const storeyId of [up.storeyId, from.storeyId])
      expect(isDrawnOn(found.plan, up, storeyId)).toBe(true);
    expect(isDrawnOn(found.plan, from, up.storeyId)).toBe(false);
  });

  it('need a wall where they come out of a void', () => {
    const { from, to } = begin(leg('leg-r03r04'));
    const down = positionOfWaypoint(found.plan, movesFrom(found.plan, from, to).down.waypoint ?? never());
    const [x, y] = from.at;
    const open = { ...(down ?? from), at: [x - 1200, y + 200] as unknown as typeof from.at };
    expect(movesFrom(found.plan, open, to).up.whyNot).toBe('no wall stands here');
    expect(movesFrom(found.plan, open, to).down.whyNot).toBe('there is nothing below');
  });
});

function never(): never {
  throw new Error('There is no such way.');
}
