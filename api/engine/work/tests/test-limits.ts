import type { CircuitProof } from '../../proof/circuit-proof.ts';
import { rcdTestLimit } from '../../proof/expected-limits.ts';
import { coldLimit } from '../../proof/loop-limit.ts';
import type { TestLimit } from './sheet-test.ts';

/** What a point's limit is looked up in. */
export interface LimitsOf {
  readonly proof: CircuitProof;
}

/** What a loop read at a point may be on warm conductors, Ω, as the checks have it. */
const warmLoopLimit = ({ proof }: LimitsOf, point: string): number | null =>
  proof.points.find((each) => each.point === point)?.zsMaxOhm ?? null;

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
  const source =
    warmOhm === maximumOhm ? words : `${warmOhm.toFixed(2)} Ω, for the fuse of the unit before it`;
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

/**
 * How long the circuit's RCD may take, of a delayed one (type S) how long it must.
 * Source: BS 7671 643.8, times of BS EN 61008 and BS EN 61009.
 */
export function rcdTestLimitOf({ tests: { rcd } }: CircuitProof): TestLimit | null {
  if (rcd === null) return null;
  const { testMa, minimumMs, maximumMs } = rcd;
  return minimumMs === 0
    ? { bound: 'most', value: maximumMs, words: `an RCD without delay, at ${testMa} mA` }
    : {
        bound: 'between',
        least: minimumMs,
        value: maximumMs,
        words: `a delayed RCD, type S, at ${testMa} mA`,
      };
}

/**
 * The longest that an RCD in an outlet or a unit may take, its rating taken for the usual 30 mA.
 * Source: BS 7288 as handbooks of testing had it, from memory; its edition of 2016 was not seen, and BS 7671 643.8 has 300 ms for any without delay: the shorter is taken.
 */
export function ownRcdLimit(): TestLimit {
  const { maximumMs } = rcdTestLimit('in-accessory');
  const { maximumMs: generalMs } = rcdTestLimit('general');
  return {
    bound: 'most',
    value: maximumMs,
    words: `an RCD in an accessory, as BS 7288 had it; BS 7671 643.8 allows ${generalMs} ms. Look on it for its rating`,
  };
}
