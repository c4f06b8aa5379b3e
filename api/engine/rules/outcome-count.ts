import type { Finding, Outcome } from './finding.ts';

/** How many findings come out so. */
export const outcomeCount = (findings: readonly Pick<Finding, 'outcome'>[], outcome: Outcome): number =>
  findings.filter((finding) => finding.outcome === outcome).length;
