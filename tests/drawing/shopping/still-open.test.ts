import { describe, expect, it } from 'vitest';
import { stillOpenOf } from '#drawing/shopping/still-open.ts';
import type { OutcomeQuestion } from '#engine/schemes/outcomes/outcome-plan.ts';

const box: OutcomeQuestion = {
  id: 'box/r1',
  kind: 'box',
  subjects: ['r1'],
  words: 'How deep is the box?',
  outcomes: [
    { id: 'deep', words: 'Deep', kit: [], isServed: true, addsPence: null },
    { id: 'shallow', words: 'Shallow', kit: [], isServed: false, addsPence: 0 },
  ],
};
const words = (openPence: number, openUnpriced: number): string =>
  stillOpenOf({ questions: [box], openPence, openUnpriced }).words;

describe('what the kit for every outcome costs', () => {
  it('is told where all of it is priced', () => {
    expect(words(336, 0)).toContain('costs £3.36 more.');
    expect(words(0, 0)).toContain('costs no more.');
  });

  it('is never nothing, nor the whole, where some of it is in no price list', () => {
    expect(words(0, 2)).toContain('costs what is asked for 2 things that the price list does not hold.');
    expect(words(336, 1)).toContain('costs £3.36 more, and 1 thing that the price list does not hold.');
  });
});
