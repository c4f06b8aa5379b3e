import { describe, expect, it } from 'vitest';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { wallsInWords, wallWords } from '#engine/plan/wall-words.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';

const plan = buildPlan(demoJob('saltglass-row'));

describe('walls in words', () => {
  it('names a wall by the room that it looks into', () => {
    expect(wallWords(plan, 'ff-right-2')).toBe('the wall of Bedroom 2');
  });

  it('names a partition by the rooms on both of its sides', () => {
    expect(wallWords(plan, 'ff-land-01')).toBe('the wall between Bedroom 2 and Landing');
  });

  it('says so when no room lists the wall', () => {
    expect(wallWords(plan, 'nowhere')).toBe('a wall of no named room');
  });

  it('names each of several walls once', () => {
    expect(wallsInWords(plan, ['ff-right-2', 'ff-right-1', 'ff-right-2'])).toBe(
      'the wall of Bedroom 1 and the wall of Bedroom 2',
    );
  });
});
