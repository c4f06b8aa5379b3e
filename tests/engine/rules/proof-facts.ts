import type { CircuitProof, LegProof, PointProof } from '#engine/proof/circuit-proof.ts';
import type { Facts } from '#engine/rules/facts.ts';
import { circuitOf, type FactsLiteral, factsOf, pointOf, schemeOf, shapeOf } from './facts-builder.ts';

/** A point with 5 V dropped and 0.6 Ω of 1.37 Ω. */
export const pointProofOf = (point: string, partial: Partial<PointProof> = {}): PointProof => ({
  point,
  dropV: 5,
  r1r2ColdOhm: 0.2,
  r1r2HotOhm: 0.25,
  zsColdOhm: 0.55,
  zsHotOhm: 0.6,
  zsServiceColdOhm: 0.5,
  zsMaxOhm: 1.37,
  ...partial,
});

/** A leg of a ring with 16 A of 20 A. */
export const legProofOf = (leg: string, partial: Partial<LegProof> = {}): LegProof => ({
  leg,
  from: 'c',
  to: 'p',
  currentA: 16,
  izA: 20,
  share: 0.8,
  ...partial,
});

/** A ring `c`, proved whole, of one point `p`. */
export const proofOf = (partial: Partial<CircuitProof> = {}): CircuitProof => ({
  circuit: 'c',
  shape: 'ring',
  scenario: 'handbook',
  assumptions: [],
  isWhole: true,
  legs: [legProofOf('l')],
  points: [pointProofOf('p')],
  expected: { conductorC: 20, isTold: false, ring: null, points: [] },
  protective: [],
  source: { ohm: 0.35, from: 'intake' },
  limit: {
    by: 'overcurrent',
    maximumOhm: 1.37,
    coldOhm: 1.09,
    coldRule: 'eighty-percent',
    rcdOhm: null,
    words: 'B32: 218.5 V ÷ 160 A',
  },
  dropLimitV: 11.5,
  lightingDropLimitV: 6.9,
  dropCorrection: 1,
  tests: { insulation: { testV: 500, minimumMegohm: 1 }, rcd: null, disconnectWithinS: 0.4 },
  longest: null,
  otherScenarios: [],
  ...partial,
});

/** Facts of a scheme on the ring `c` with these proofs, now and as found. */
export const provedFacts = (
  now: Partial<CircuitProof>,
  before: Partial<CircuitProof> = {},
  partial: FactsLiteral = {},
): Facts =>
  factsOf({
    scheme: schemeOf(),
    shapes: [shapeOf('c')],
    proofs: new Map([['c', proofOf(now)]]),
    proofsFound: new Map([['c', proofOf(before)]]),
    ...partial,
    job: { circuits: [circuitOf('c')], points: [pointOf('p')], ...partial.job },
  });
