import { describe, expect, it } from 'vitest';
import { demoEstimate, demoNames } from './demo-estimates.ts';

/** Rules of what cables, joints, terminals, fuses, loads and RCDs may do. */
const rules = /^(SP|CA|FU|FL|RC|TM|JN)\d/;

describe.each(demoNames)('the findings of %s', (name) => {
  it('have one outcome for a rule and a subject', () => {
    const { asFound, schemes } = demoEstimate(name);
    for (const findings of [asFound.findings, ...schemes.map((scheme) => scheme.findings)]) {
      const keys = findings
        .filter(({ rule }) => rules.test(rule))
        .map(({ rule, subject }) => `${rule} ${subject}`);
      expect(keys.length).toBeGreaterThan(0);
      expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
    }
  });
});
