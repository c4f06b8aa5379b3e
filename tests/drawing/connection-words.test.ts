import { describe, expect, it } from 'vitest';
import { connectionsTold } from '#drawing/connection-words.ts';
import type { Connection } from '#model/scheme.ts';

const spur = (to: string, from = 'R1'): Connection => ({ id: to, kind: 'spur', from: { point: from }, to });

describe('connections in words', () => {
  it('come by what they join, W2 before W10, whatever order they were made in', () => {
    const made = [spur('W10'), spur('W2', 'R9'), spur('W1')];
    const inWords = (all: readonly Connection[]): readonly string[] =>
      connectionsTold(all, (id) => id).map(({ words }) => words);
    const told = ['W1 spur from R1', 'W2 spur from R9', 'W10 spur from R1'];
    expect(inWords(made)).toEqual(told);
    expect(inWords(made.toReversed())).toEqual(told);
  });
});
