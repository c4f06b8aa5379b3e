import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { allRules } from '#engine/all-rules.ts';
import { type Rule, rule } from '#engine/rules/rule.ts';
import { factsOf } from '#engine/schemes/facts-of.ts';
import { searchSchemes } from '#engine/schemes/search/search.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { workHouse, workScheme } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import { noneWords } from '../../../../ui/found-ways/none-words.ts';
import { randomHouse } from './random-house.ts';

const library = demoLibrary();

/** Bars what only a whole scheme shows: no column fails it alone, so choices have to be looked at one by one. */
const atMostOneNewCable = rule({
  id: 'T1',
  title: 'Connections',
  source: 'this test',
  messages: { many: 'There are {actual} connections.' },
  couldFail: true,
  check: ({ scheme }) =>
    (scheme?.connections.length ?? 0) > 1
      ? [{ outcome: 'fails', origin: 'scheme', messageId: 'many', subjectId: 'c' }]
      : [],
});

const passesAll = rule({
  ...{ id: 'T3', title: 'Nothing', source: 'this test', messages: { fine: 'Fine.' }, couldFail: false },
  check: () => [],
});

/** Bars every spur until the circuit has an RCBO, which the search does not know beforehand that it will cost. */
const rcboForSpurs = rule({
  id: 'T2',
  title: 'Spurs',
  source: 'this test',
  messages: { bare: 'A spur without an RCBO.' },
  couldFail: true,
  check: ({ scheme }) =>
    scheme?.connections.some(({ kind }) => kind === 'spur') && scheme.remedies.length === 0
      ? [
          {
            ...{ outcome: 'fails', origin: 'scheme', messageId: 'bare', subjectId: 'c' },
            fix: { kind: 'rcbo', at: 'c' },
          },
        ]
      : [],
});

/** A ring behind an RCBO, and a board that is full. */
function job(found: number) {
  const one = randomHouse(16, { found, wanted: 4 });
  const rcd = { type: 'A', mA: 30 } as const;
  return {
    ...one,
    boards: one.boards.map((board) => ({ ...board, spareWays: 0 })),
    circuits: one.circuits.map((circuit) => ({
      ...circuit,
      device: { standard: 'BS-EN-61009', curve: 'B', ratingA: 32, rcd } as const,
    })),
  };
}

function searcherIn(found: number) {
  const house = workHouse(job(found), tariffOf(library), defaultLengthAllowances);
  const { proofs: proofsFound } = factsOf(workScheme(house, null), library, null);
  const ways = waysInHouse(house, library);
  return (barring: Rule, cap?: number, kinds = false) =>
    searchSchemes(
      { house, library, rules: [...allRules, barring], proofsFound },
      { ways, aim: 'pence', most: 1, kinds, ...(cap === undefined ? {} : { cap }) },
    );
}

const search = searcherIn(4);

describe('a search that stops at its cap', () => {
  const whole = search(atMostOneNewCable);
  const [best] = whole.schemes;

  it('is not needed where the cheapest that passes comes within it', () => {
    expect(whole.optimal).toBe(true);
    expect(whole.examined).toBeGreaterThan(5);
    expect(best?.scheme.connections).toHaveLength(1);
    expect(whole.boundPence).toBe(best?.worksPence);
    expect(whole.gap).toBe(0);
  });

  it('claims no more than what the next choice costs, and says that the proof is open', () => {
    const bounds = [0, 1, 2, 5, whole.examined - 1].map((cap) => {
      const stopped = search(atMostOneNewCable, cap);
      expect(stopped.examined).toBe(cap);
      expect(stopped.optimal).toBe(false);
      expect(stopped.gap).toBeNull();
      expect(stopped.schemes).toEqual([]);
      return stopped.boundPence;
    });
    expect(bounds[0]).toBeGreaterThan(0);
    expect(bounds).toEqual(bounds.toSorted((a, b) => a - b));
    expect(new Set(bounds).size).toBeGreaterThan(2);
    expect(bounds.at(-1)).toBeLessThanOrEqual(whole.boundPence);
    expect(search(atMostOneNewCable, whole.examined)).toMatchObject({
      boundPence: whole.boundPence,
      optimal: true,
      gap: 0,
    });
  });

  it('keeps what it has found, and says how far that may lie above the cheapest', () => {
    const first = search(rcboForSpurs, 1);
    const [found] = first.schemes;
    expect(found?.scheme.remedies).toEqual([{ kind: 'rcbo', at: 'c' }]);
    expect(first.optimal).toBe(false);
    expect(first.boundPence).toBeLessThan(found?.worksPence ?? 0);
    expect(first.gap).toBeCloseTo((found?.worksPence ?? 0) / first.boundPence - 1, 9);
    const proved = search(rcboForSpurs);
    expect(proved).toMatchObject({ optimal: true, gap: 0 });
    expect(proved.boundPence).toBeGreaterThanOrEqual(first.boundPence);
    expect(proved.boundPence).toBeLessThanOrEqual(found?.worksPence ?? 0);
  });

  it('gives a kind up with what it costs at least, where every choice of it that was tried fails, and does not call it impossible', () => {
    // Four points at any of six: more ways than are looked at of one kind.
    const searchSix = searcherIn(6);
    const { bestOfKind } = searchSix(atMostOneNewCable, undefined, true);
    const spurs = bestOfKind.find(({ kind }) => kind === 'spurs');
    expect(spurs).toMatchObject({ schemeId: null, why: 'given-up', examined: 200 });
    expect(spurs?.reason).toContain('connections');
    const free = searchSix(passesAll, undefined, true);
    const cheapest = free.schemes.find(
      ({ scheme }) => scheme.id === free.bestOfKind.find(({ kind }) => kind === 'spurs')?.schemeId,
    );
    // Two hundred cheaper choices of spurs were looked at and failed.
    expect(spurs?.boundPence).toBeGreaterThanOrEqual(cheapest?.worksPence ?? Number.POSITIVE_INFINITY);
    expect(spurs && noneWords(spurs)).toMatch(
      /^Given up after 200 ways that failed; any other costs at least £[\d,.]+ to do\. It may be possible\. The first failed by: Connections: There are +connections\.$/,
    );
    // The board has no spare way: that no search would change.
    expect(bestOfKind.find(({ kind }) => kind === 'new-radial')).toMatchObject({
      ...{ schemeId: null, why: 'impossible', boundPence: null },
      reason: 'No board is known to have a spare way, or it has no place on the plan.',
    });
  });
});
