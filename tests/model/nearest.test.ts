import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearest } from '#model/nearest.ts';

describe('the nearest word', () => {
  it.each([
    ['heigthMm', ['heightMm', 'lengthMm'], 'heightMm'],
    ['Socket_Twin', ['socket-single', 'socket-twin'], 'socket-twin'],
    ['wal', ['wall', 'side'], 'wall'],
    ['colour', ['wall', 'side'], undefined],
  ])('to %s among %j is %s', (word, candidates, expected) => {
    expect(nearest(word, candidates)).toBe(expected);
  });

  it('to a candidate is that candidate', () => {
    const candidates = ['alpha', 'beta', 'gamma'];
    fc.assert(fc.property(fc.constantFrom(...candidates), (word) => nearest(word, candidates) === word));
  });

  it('to a word with two neighbours swapped is the word', () => {
    const word = 'accessible';
    fc.assert(
      fc.property(fc.nat(word.length - 2), (at) => {
        const swapped = word.slice(0, at) + word[at + 1] + word[at] + word.slice(at + 2);
        expect(nearest(swapped, ['switched', word, 'structural'])).toBe(word);
      }),
    );
  });
});
