import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { type CheckResult, rule } from './rule.ts';

/**
 * Least area of a copper protective conductor by the line conductor's, mm², where nobody calculates.
 * Source: BS 7671 Table 54.7.
 */
export function leastProtectiveMm2(lineMm2: number): number {
  if (lineMm2 <= 16) return lineMm2;
  return lineMm2 <= 35 ? 16 : lineMm2 / 2;
}

type Message = 'enough' | 'small' | 'unknown';

/** The earthing conductor is thick enough for the tails. */
export const earthingConductor = rule<Message>({
  id: 'SU4',
  title: 'Size of the earthing conductor',
  source: 'BS 7671 543.1, Table 54.7',
  // At an electrode, other figures hold.
  applies: ({ job }) => job.supply.earthing !== 'TT',
  messages: {
    enough: 'The earthing conductor is {actual} mm²; by the table {limit} mm² serves.',
    small:
      'The earthing conductor is {actual} mm²; the table asks {limit} mm² for tails of {tails} mm², a calculation may allow less.',
    unknown: 'The size of the earthing conductor or of the tails is not known.',
  },
  remedies: {
    small: 'Renew it, or show by calculation that it serves.',
    unknown: 'Measure both at the intake, without touching the distributor’s seals.',
  },
  couldFail: false,
  check: (facts) => [{ subjectId: 'supply', origin: 'found', ...judged(facts) }],
});

function judged({ job }: Facts): Omit<CheckResult<Message>, 'subjectId' | 'origin'> {
  const { earthingMm2, tailsMm2 } = job.supply;
  if (earthingMm2 === undefined || tailsMm2 === undefined)
    return { outcome: 'not-proven', messageId: 'unknown' };
  const leastMm2 = leastProtectiveMm2(tailsMm2);
  const numbers = figures(earthingMm2, leastMm2, 'mm²', { tails: tailsMm2 });
  return earthingMm2 >= leastMm2
    ? { outcome: 'passes', messageId: 'enough', ...numbers }
    : { outcome: 'decide', messageId: 'small', ...numbers };
}
