import { describe, expect, it } from 'vitest';
import { demoEstimate, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { markedStoreys, markedThings, storeyOfAny } from '../../../ui/elements/plan/marked-storeys.ts';

const { worked } = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');
const marked = (chosen: string | null, ...lit: string[]) => ({ chosen, lit: new Set(lit) });
const storeyOf = (pointId: string): string | undefined => worked.plan.positionOfPoint.get(pointId)?.storeyId;

describe('what is marked on other storeys', () => {
  it('is counted storey by storey', () => {
    const counts = markedStoreys(worked, marked(null, 'w1-living1', 'w2-bedroom', 'w3-bedroom'));
    expect([...counts]).toEqual([
      [storeyOf('w1-living1'), 1],
      [storeyOf('w2-bedroom'), 2],
    ]);
  });

  it('counts what is both chosen and lit once', () => {
    const counts = markedStoreys(worked, marked('w2-bedroom', 'w2-bedroom'));
    expect([...counts]).toEqual([[storeyOf('w2-bedroom'), 1]]);
  });

  it('counts a connection by what is drawn of it: its cable, its joint, the points at its ends', () => {
    const things = [...markedThings(worked, marked(null, 'c1-w2-spur'))].filter((id) => id !== 'c1-w2-spur');
    const counts = markedStoreys(worked, marked(null, 'c1-w2-spur'));
    expect([...counts]).toEqual([[storeyOf('w2-bedroom'), things.length]]);
  });

  it('is nothing where nothing is marked, or what is marked has no place', () => {
    expect(markedStoreys(worked, marked(null)).size).toBe(0);
    expect(markedStoreys(worked, marked('no-such-thing')).size).toBe(0);
  });
});

describe('the storey that the plan turns to', () => {
  it('is the first on which any of the things is drawn', () => {
    expect(storeyOfAny(worked, ['no-such-thing', 'w3-bedroom', 'w1-living1'])).toBe(storeyOf('w3-bedroom'));
  });

  it('is that of a wall as well as of a point', () => {
    for (const [id, { storeyId }] of worked.plan.wallById) expect(storeyOfAny(worked, [id])).toBe(storeyId);
  });

  it('is none for what is drawn nowhere', () => {
    expect(storeyOfAny(worked, ['no-such-thing'])).toBeNull();
  });
});
