import { describe, expect, it } from 'vitest';
import type { CircuitProof, OtherScenario } from '#engine/proof/circuit-proof.ts';
import { heavyAppliances } from '#engine/rules/heavy-appliances.ts';
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

interface Case {
  readonly anywhereA?: number;
  /** Null where no heavy appliance is likely anywhere. */
  readonly heavyA?: number | null;
  readonly untold?: readonly string[];
}

const proof = ({ anywhereA = 30, heavyA = null, untold = [] }: Case): Partial<CircuitProof> => ({
  otherScenarios: [
    scenario('near-one-end', anywhereA),
    ...(heavyA === null ? [] : [scenario('heavy-appliances', heavyA)]),
  ],
  heavyAppliances: { points: heavyA === null ? [] : ['p'], untold },
});

const said = (now: Case, before: Case = {}) =>
  saidBy(heavyAppliances, provedFacts(proof(now), proof(before)));

describe('heavy appliances near one end of a ring', () => {
  it('[LS2] pass at exactly what the cable may carry', () => {
    expect(said({ heavyA: 20 })).toMatchObject([
      { outcome: 'passes', messageId: 'within', subjectId: 'l', actual: 20, limit: 20, unit: 'A' },
    ]);
  });

  it('[LS2] are for a designer to decide just above, whatever else is not told', () => {
    expect(said({ heavyA: 20.1, untold: ['q'] })).toMatchObject([
      { outcome: 'decide', messageId: 'near', origin: 'scheme', actual: 20.1 },
    ]);
  });

  it('[LS2] are as found where the scheme makes them no worse', () => {
    expect(said({ heavyA: 22 }, { heavyA: 22 })).toMatchObject([{ outcome: 'decide', origin: 'found' }]);
    expect(said({ heavyA: 23 }, { heavyA: 22 })).toMatchObject([{ outcome: 'decide', origin: 'scheme' }]);
    expect(said({ heavyA: 22 }, { heavyA: 20 })).toMatchObject([{ outcome: 'decide', origin: 'scheme' }]);
  });

  it('[LS2] are not proved while neither room nor load of some point is told', () => {
    expect(said({ untold: ['q', 'r'] })).toMatchObject([
      { outcome: 'not-proven', messageId: 'notTold', subjectId: 'c', actual: 30 },
    ]);
    expect(said({ heavyA: 15, untold: ['q'] })).toMatchObject([{ outcome: 'not-proven' }]);
  });

  it('[LS2] pass without being asked for where no two points could overload a cable', () => {
    expect(said({ anywhereA: 20, untold: ['q'] })).toMatchObject([
      { outcome: 'passes', messageId: 'anywhere' },
    ]);
  });

  it('[LS2] pass where none is likely on the ring', () => {
    expect(said({})).toMatchObject([{ outcome: 'passes', messageId: 'none', subjectId: 'c' }]);
  });

  it('[LS2] say nothing of radials', () => {
    expect(saidBy(heavyAppliances, provedFacts({ ...proof({ heavyA: 30 }), shape: 'radial' }))).toEqual([]);
  });
});
