import { unitOfLoadSide } from '../../circuit/load-side.ts';
import type { Worked } from '../../connections/worked.ts';
import type { CircuitProof } from '../../proof/circuit-proof.ts';
import { coldLimit } from '../../proof/loop-limit.ts';
import type { TestLimit } from './sheet-test.ts';

/** The circuit and the house that a point's limit is looked up in. */
export interface LimitsOf {
  readonly worked: Worked;
  readonly proof: CircuitProof;
}

/**
 * What a loop read at a point may be on warm conductors, Ω: by the circuit's device, or by the fuse of a unit before the point. A unit itself is
 * held to the device, which protects the cable up to it.
 */
function warmLoopLimit({ worked, proof }: LimitsOf, point: string): number | null {
  const own = proof.points.find((each) => each.point === point)?.zsMaxOhm ?? null;
  const { maximumOhm } = proof.limit;
  const isUnit = unitOfLoadSide(point) !== point || worked.plan.pointById.get(point)?.kind === 'fused-unit';
  return isUnit && own !== null && maximumOhm !== null ? Math.min(own, maximumOhm) : own;
}

/**
 * What a loop read at a point on cold conductors may be, Ω; on TT by the RCD, whatever the warmth.
 *
 * @returns null where the device is not known, or the point is none of the proof's.
 */
export function coldLoopLimit(of: LimitsOf, point: string): number | null {
  const { limit } = of.proof;
  const warmOhm = warmLoopLimit(of, point);
  if (warmOhm === null) return null;
  return limit.by === 'rcd' ? warmOhm : coldLimit(warmOhm, limit.coldRule);
}

/** The limit of a loop read at a point, with how it comes about. */
export function loopTestLimit(of: LimitsOf, point: string): TestLimit | null {
  const { proof } = of;
  const value = coldLoopLimit(of, point);
  if (value === null) return null;
  const { by, words, coldRule, maximumOhm } = proof.limit;
  const warmOhm = warmLoopLimit(of, point) ?? value;
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
