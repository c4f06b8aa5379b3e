import type { CircuitProof } from '../../proof/circuit-proof.ts';
import { coldLimit } from '../../proof/loop-limit.ts';
import type { TestLimit } from './sheet-test.ts';

/**
 * What a loop read at a point on cold conductors may be, Ω: by the circuit's device, or by a plug fuse before the point; on TT by the RCD,
 * whatever the warmth.
 *
 * @returns null where the device is not known, or the point is none of the proof's.
 */
export function coldLoopLimit({ points, limit }: CircuitProof, point: string): number | null {
  const maximumOhm = points.find((each) => each.point === point)?.zsMaxOhm ?? null;
  if (maximumOhm === null) return null;
  return limit.by === 'rcd' ? maximumOhm : coldLimit(maximumOhm, limit.coldRule);
}

/** The limit of a loop read at a point, with how it comes about. */
export function loopTestLimit(proof: CircuitProof, point: string): TestLimit | null {
  const value = coldLoopLimit(proof, point);
  if (value === null) return null;
  const { by, words, coldRule, maximumOhm } = proof.limit;
  const warmOhm = proof.points.find((each) => each.point === point)?.zsMaxOhm ?? value;
  const source = warmOhm === maximumOhm ? words : `${warmOhm.toFixed(2)} Ω, for the fuse of the unit`;
  return { bound: 'most', value, words: by === 'rcd' ? words : `${ruleWords[coldRule]} ${source}` };
}

const ruleWords = {
  'eighty-percent': '80 % of',
  'guide-divisor': 'by the On-Site Guide’s divisor,',
} as const;

/** The least insulation of a circuit. Source: BS 7671 Table 64. */
export const insulationTestLimit = ({ tests: { insulation } }: CircuitProof): TestLimit => ({
  bound: 'least',
  value: insulation.minimumMegohm,
  words: 'BS 7671 Table 64',
});

/** The longest that the circuit's RCD may take. Source: BS 7671 643.8, times of BS EN 61008 and BS EN 61009. */
export const rcdTestLimitOf = ({ tests: { rcd } }: CircuitProof): TestLimit | null =>
  rcd === null
    ? null
    : { bound: 'most', value: rcd.maximumMs, words: `an RCD without delay, at ${rcd.testMa} mA` };
