import { describe, expect, it } from 'vitest';
import { demoEstimate } from '#tests/engine/demo-jobs/demo-estimates.ts';
import type { Candidate } from '../../../ui/found-ways/candidate.ts';
import { foundOf } from '../../../ui/found-ways/searcher.ts';
import { whatIfWords } from '../../../ui/found-ways/what-if-words.ts';
import { pounds } from '../../../ui/written.ts';
import { foundAmong } from './made-searcher.ts';

const [first, second] = foundOf(foundAmong(demoEstimate('saltglass-row'))).candidates;
const labelOf = (id: string): string => id;
const grossOf = (one: Candidate | undefined): number => one?.totals.grossPence ?? 0;

describe('what another way of a leg would change', () => {
  it('is told beside the cheapest that is listed, where the question looked at dearer ones alone', () => {
    if (first === undefined || second === undefined) throw new Error('two are wanted');
    const [now, then] = whatIfWords({ before: second, after: first }, labelOf, first);
    expect(now).toContain(`As it is taken to run now: ${pounds(grossOf(first))}, `);
    expect(then).toBe(`If it ran there: the same way, the price stays (${pounds(grossOf(first))}).`);
  });

  it('is told by itself where nothing is listed', () => {
    if (first === undefined || second === undefined) throw new Error('two are wanted');
    const [now, then] = whatIfWords({ before: second, after: first }, labelOf, null);
    expect(now).toContain(`As it is taken to run now: ${pounds(grossOf(second))}, `);
    expect(then).toContain(`${pounds(grossOf(second) - grossOf(first))} less.`);
    expect(whatIfWords({ before: second, after: null }, labelOf, null)).toEqual([
      'If it ran there, no way that fails no check would be found.',
    ]);
    expect(whatIfWords({ before: null, after: second }, labelOf, null)[0]).toMatch(
      /^If it ran there, a way would be found: /,
    );
  });
});
