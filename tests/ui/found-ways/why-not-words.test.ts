import { describe, expect, it } from 'vitest';
import type { Connection } from '#model/scheme.ts';
import { demoEstimate } from '#tests/engine/demo-jobs/demo-estimates.ts';
import type { Candidate } from '../../../ui/found-ways/candidate.ts';
import type { WhyNotAnswer } from '../../../ui/found-ways/search-asks.ts';
import { foundOf } from '../../../ui/found-ways/searcher.ts';
import { askedFor } from '../../../ui/found-ways/why-not-words.ts';
import { pounds } from '../../../ui/written.ts';
import { foundAmong } from './made-searcher.ts';

const { candidates } = foundOf(foundAmong(demoEstimate('saltglass-row')));
const at = (way: number): Candidate => {
  const one = candidates[way - 1];
  if (one === undefined) throw new Error(`way ${way} is wanted`);
  return one;
};
const grossOf = (way: number): number => at(way).totals.grossPence;
const money = (candidate: Candidate, morePence: number): Extract<WhyNotAnswer, { answer: 'money' }> => ({
  answer: 'money',
  morePence,
  with: candidate,
});
const dearer = (candidate: Candidate, by: number): Candidate => ({
  ...candidate,
  scheme: { ...candidate.scheme, id: 'asked' },
  totals: { ...candidate.totals, grossPence: candidate.totals.grossPence + by },
});
/** A connection that no listed way has. */
const nowhere: Connection = { id: 'asked', kind: 'spur', from: { point: 'no-such' }, to: 'no-such' };

/** A connection of one way that no cheaper one has. */
function ownOf(way: number): Connection {
  const bare = ({ id: _id, ...rest }: Connection): string => JSON.stringify(rest);
  const before = new Set(candidates.slice(0, way - 1).flatMap(({ scheme }) => scheme.connections.map(bare)));
  const own = at(way).scheme.connections.find((one) => !before.has(bare(one)));
  if (own === undefined) throw new Error(`way ${way} has nothing of its own`);
  return own;
}

describe('what a connection that somebody has in mind would cost', () => {
  it('counts from way 1, so that it adds up with the prices on the cards', () => {
    const told = askedFor(nowhere, money(dearer(at(1), 1234), 99), candidates);
    expect(told.words).toBe(`It may be done, for £12.34 more than way 1: ${pounds(grossOf(1) + 1234)}.`);
    expect(told.way).toBeNull();
  });

  it('names the listed way that has it, where that is no dearer than the answer', () => {
    const way = [2, 3, 4, 5].find((n) => {
      try {
        return ownOf(n) !== undefined;
      } catch {
        return false;
      }
    });
    if (way === undefined) throw new Error('one is wanted');
    const told = askedFor(ownOf(way), money(dearer(at(way), 500), 1), candidates);
    expect(told).toMatchObject({ way, best: at(way) });
    expect(told.words).toContain(
      `${pounds(grossOf(way) - grossOf(1))} more than way 1: ${pounds(grossOf(way))}`,
    );
    const cheaper = askedFor(ownOf(way), money(dearer(at(way), -1), 1), candidates);
    expect(cheaper.way).toBeNull();
  });

  it('says of what way 1 has that it is joined so there', () => {
    const [own] = at(1).scheme.connections;
    if (own === undefined) throw new Error('one is wanted');
    const told = askedFor({ ...own, id: 'asked' }, money(at(1), 0), candidates);
    expect(told).toMatchObject({
      way: 1,
      words: `It is joined so in way 1, the cheapest: ${pounds(grossOf(1))}.`,
    });
  });

  it('lets the answer’s own figure stand where no way is listed', () => {
    expect(askedFor(nowhere, money(at(2), 250), []).words).toBe(
      `It may be done, for £2.50 more: ${pounds(grossOf(2))}.`,
    );
    expect(askedFor(nowhere, money(at(2), 0), []).words).toBe(
      `It may be done, for the same ${pounds(grossOf(2))}.`,
    );
    expect(askedFor(nowhere, money(at(2), -250), []).words).toMatch(/comes £2\.50 cheaper in full: /);
  });
});
