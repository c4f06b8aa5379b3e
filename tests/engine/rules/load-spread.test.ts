import { describe, expect, it } from 'vitest';
import type { OtherScenario } from '#engine/proof/circuit-proof.ts';
import { loadSpread } from '#engine/rules/load-spread.ts';
import { saidBy } from './facts-builder.ts';
import { legProofOf, provedFacts } from './proof-facts.ts';

const scenario = (name: OtherScenario['scenario'], currentA: number): OtherScenario => ({
  scenario: name,
  assumptions: [],
  legs: [
    legProofOf('l', { currentA, share: currentA / 20 }),
    legProofOf('m', { currentA: 30, izA: null, share: null }),
  ],
  worstDropV: 5,
  worstPoint: 'p',
  openLeg: null,
});
const said = (usualA: number, allA: number, shape: 'ring' | 'radial' = 'ring') =>
  saidBy(
    loadSpread,
    provedFacts({
      shape,
      otherScenarios: [scenario('named-loads', usualA), scenario('all-named-loads', allA)],
    }),
  );

describe('named loads along a ring', () => {
  it('[LS1] pass at exactly what a cable may carry', () => {
    expect(said(16, 20)).toMatchObject([
      { outcome: 'passes', messageId: 'within', subjectId: 'l', actual: 20, limit: 20 },
    ]);
  });

  it('[LS1] are for a designer to decide above, with diversity or all at once', () => {
    expect(said(16, 21)).toMatchObject([{ outcome: 'decide', messageId: 'atOnce' }]);
    expect(said(21, 30)).toMatchObject([{ outcome: 'decide', messageId: 'over', actual: 21 }]);
  });

  it('[LS1] say nothing of radials, nor where no load is named', () => {
    expect(said(30, 30, 'radial')).toEqual([]);
    expect(saidBy(loadSpread, provedFacts({}))).toEqual([]);
  });
});
