import { describe, expect, it } from 'vitest';
import { byMark } from '#engine/work/mark-order.ts';

describe('the order of marks', () => {
  it('is as people count, letters first', () => {
    expect(['W2', 'P10', 'P2', 'P1', 'Hall', 'P'].toSorted(byMark)).toEqual([
      'Hall',
      'P',
      'P1',
      'P2',
      'P10',
      'W2',
    ]);
  });
});
