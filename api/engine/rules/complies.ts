import type { Finding } from './finding.ts';

/**
 * `no` when the scheme causes a failure or a stop gate is shut; else `not-proven` when a rule that could
 * fail could not be judged; else `yes`. Failures of what was found do not gate, nor do decisions and advice.
 */
export function complies(findings: readonly Finding[]): 'yes' | 'no' | 'not-proven' {
  if (findings.some((finding) => finding.outcome === 'fails' && finding.gates)) return 'no';
  if (findings.some((finding) => finding.outcome === 'not-proven' && finding.gates)) return 'not-proven';
  return 'yes';
}
