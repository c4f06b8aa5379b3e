import { describe, expect, it } from 'vitest';
import { counted } from '#engine/rules/counted.ts';

describe('a number with its noun', () => {
  it('is in the singular for one alone', () => {
    expect([0, 1, 2].map((count) => counted(count, 'cable'))).toEqual(['0 cables', '1 cable', '2 cables']);
  });
});
