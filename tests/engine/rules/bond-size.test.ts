import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastBondMm2 } from '#engine/connections/least-bond.ts';
import { bondSize } from '#engine/rules/bond-size.ts';
import type { Supply } from '#model/installation.ts';
import { factsOf, jobOf, saidBy, schemeOf } from './facts-builder.ts';

const bonded = (mm2: number): Supply['bonding'] => [{ service: 'gas', mm2, seen: true }];
const supplyOf = (partial: Partial<Supply>): Supply => ({ ...jobOf().supply, ...partial });
const said = (partial: Partial<Supply>) => saidBy(bondSize, factsOf({ job: { supply: supplyOf(partial) } }));

describe('size of main bonds', () => {
  it('[SU3] passes exactly 10 mm² with PME', () => {
    expect(said({ bonding: bonded(10) })).toMatchObject([
      { outcome: 'passes', subjectId: 'supply/bond-gas', actual: 10, limit: 10 },
    ]);
  });

  it('[SU3] leaves 6 mm² with PME to be decided, with the renewal as remedy', () => {
    expect(said({ bonding: bonded(6) })).toMatchObject([
      { outcome: 'decide', messageId: 'small', fix: { kind: 'bond-upgrade', at: 'gas' } },
    ]);
  });

  it('[SU3] asks 6 mm² or half the earthing conductor otherwise', () => {
    expect(said({ earthing: 'TN-S', earthingMm2: 10, bonding: bonded(6) })).toMatchObject([
      { outcome: 'passes', limit: 6 },
    ]);
    expect(said({ earthing: 'TN-S', earthingMm2: 16, bonding: bonded(6) })).toMatchObject([
      { outcome: 'decide', limit: 8 },
    ]);
  });

  it('[SU3] says what a figure goes by, so that 8 mm² is no riddle', () => {
    const basis = (partial: Partial<Supply>) => {
      const facts = factsOf({ job: { supply: supplyOf({ bonding: bonded(16), ...partial }) } });
      return [...bondSize.check(facts)][0]?.values?.basis;
    };
    expect(basis({ earthing: 'TN-C-S' })).toMatch(/PME/);
    expect(basis({ earthing: 'TN-S', earthingMm2: 16 })).toBe('half the earthing conductor of 16 mm²');
    expect(basis({ earthing: 'TN-S', earthingMm2: 6 })).toMatch(/^the least of all/);
    expect(basis({ earthing: 'TN-S', earthingMm2: 70 })).toMatch(/^the most that is ever asked for/);
  });

  it('[SU3] is not proven where size or earthing is unknown, which does not gate', () => {
    expect(said({ bonding: [{ service: 'gas', seen: true }] })).toMatchObject([{ outcome: 'not-proven' }]);
    expect(said({ earthing: 'TN-S', bonding: bonded(6) })).toMatchObject([{ outcome: 'not-proven' }]);
    expect(said({ bonding: bonded(10), certainty: { 'bond-gas': 'assumed' } })).toMatchObject([
      { outcome: 'not-proven' },
    ]);
    expect(bondSize.couldFail).toBe(false);
  });

  it('[SU3] passes a bond that the scheme renews', () => {
    const scheme = schemeOf([], { remedies: [{ kind: 'bond-upgrade', at: 'gas' }] });
    const facts = factsOf({ scheme, job: { supply: supplyOf({ bonding: bonded(6) }) } });
    expect(saidBy(bondSize, facts)).toMatchObject([
      { outcome: 'passes', messageId: 'putRight', origin: 'found' },
    ]);
  });

  it('[SU3] keeps between 6 and 25 mm² whatever the earthing conductor', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 200, noNaN: true }), (earthingMm2) => {
        const least = leastBondMm2(supplyOf({ earthing: 'TN-S', earthingMm2 }));
        expect(least).toBeGreaterThanOrEqual(6);
        expect(least).toBeLessThanOrEqual(25);
      }),
      { seed: 21 },
    );
  });
});
