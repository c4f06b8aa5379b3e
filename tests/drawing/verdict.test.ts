import { describe, expect, it } from 'vitest';
import { cheapestWords, verdictOf } from '#drawing/verdict.ts';
import type { Finding, Outcome } from '#engine/rules/finding.ts';
import { demoEstimate, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';

const [pattern] = demoEstimate('saltglass-row').schemes[0]?.findings ?? [];
const findings = (counts: Partial<Record<Outcome, number>>, gates = false): readonly Finding[] => {
  if (pattern === undefined) throw new Error('no finding');
  return Object.entries(counts).flatMap(([outcome, count]) =>
    Array.from({ length: count }, (): Finding => ({ ...pattern, outcome: outcome as Outcome, gates })),
  );
};

describe('the overall mark of a scheme', () => {
  it.each([
    ['yes', findings({ passes: 9, advice: 2 }), 'passes', 'Passes every check made'],
    ['yes', findings({ passes: 9, decide: 6 }), 'decide', 'Fails nothing; 6 to decide'],
    ['yes', findings({ 'not-proven': 1 }), 'not-proven', 'Fails nothing; 1 not proven'],
    ['yes', findings({ fails: 1, decide: 2 }), 'fails', 'Adds no failure; 1 fail as found; 2 to decide'],
    [
      'not-proven',
      [...findings({ 'not-proven': 3 }, true), ...findings({ decide: 2 })],
      'not-proven',
      '3 not proven: too little is known to go ahead; 2 to decide',
    ],
    [
      'no',
      [...findings({ fails: 1 }, true), ...findings({ decide: 1 })],
      'fails',
      'Fails 1 check: it may not go ahead; 1 to decide',
    ],
  ] as const)('%s, case %#', (complies, all, outcome, words) => {
    expect(verdictOf({ complies, findings: all })).toMatchObject({ outcome, words });
  });

  it('is a tick only over nothing open, for every demo scheme', () => {
    for (const scheme of demoNames.flatMap((name) => demoEstimate(name).schemes)) {
      const open = scheme.findings.filter(({ outcome }) =>
        ['fails', 'decide', 'not-proven'].includes(outcome),
      );
      expect(verdictOf(scheme).outcome === 'passes', scheme.id).toBe(open.length === 0);
    }
  });
});

describe('the cheapest scheme', () => {
  it('is said to be allowed to go ahead only where nothing unproved stands in its way', () => {
    expect(cheapestWords({ complies: 'yes' })).toBe('cheapest that may go ahead');
    expect(cheapestWords({ complies: 'not-proven' })).not.toContain('go ahead');
    const { schemes, cheapestId } = demoEstimate('saltglass-row-quoting');
    const cheapest = schemes.find(({ id }) => id === cheapestId);
    expect(cheapest?.complies).toBe('not-proven');
  });
});
