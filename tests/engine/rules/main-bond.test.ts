import { describe, expect, it } from 'vitest';
import { mainBond } from '#engine/rules/main-bond.ts';
import type { Supply } from '#model/installation.ts';
import type { Remedy } from '#model/scheme.ts';
import { jobOf, saidBy, schemeOf } from './facts-builder.ts';
import { fixtureOf, type HouseLiteral, houseOf } from './house-builder.ts';

type Service = Supply['bonding'][number]['service'];
const bondOf = (service: Service, seen: boolean): Supply['bonding'][number] => ({ service, seen });
const said = (bonding: Supply['bonding'], house: HouseLiteral = {}, supply: Partial<Supply> = {}) =>
  saidBy(mainBond, houseOf({ ...house, job: { supply: { ...jobOf().supply, ...supply, bonding } } }));

describe('main bonds', () => {
  it.each(['water', 'gas', 'oil', 'steel'] as const)('[ST2] shut the gate where missing: %s', (service) => {
    expect(said([bondOf(service, false)])).toMatchObject([
      {
        outcome: 'fails',
        stopGate: true,
        origin: 'found',
        subjectId: `supply/bond-${service}`,
        fix: { kind: 'bond-upgrade', at: service },
      },
    ]);
  });

  it('[ST2] leave another service to be decided', () => {
    expect(said([bondOf('other', false)])).toMatchObject([{ outcome: 'decide' }]);
  });

  it('[ST2] pass where seen, and where the scheme fits them', () => {
    expect(said([bondOf('gas', true)])).toMatchObject([{ outcome: 'passes', messageId: 'seen' }]);
    const withRemedy = (remedy: Remedy): HouseLiteral => ({ scheme: schemeOf([], { remedies: [remedy] }) });
    expect(said([bondOf('gas', false)], withRemedy({ kind: 'bond-upgrade', at: 'gas' }))).toMatchObject([
      { outcome: 'passes', messageId: 'putRight', origin: 'found' },
    ]);
    expect(said([bondOf('gas', false)], withRemedy({ kind: 'bond-upgrade' }))).toMatchObject([
      { outcome: 'passes' },
    ]);
    expect(said([bondOf('gas', false)], withRemedy({ kind: 'bond-upgrade', at: 'water' }))).toMatchObject([
      { outcome: 'fails' },
    ]);
  });

  it('[ST2] are not proven where nobody told, and gate', () => {
    expect(said([])).toMatchObject([{ outcome: 'not-proven', messageId: 'nothingTold', stopGate: true }]);
    expect(said([bondOf('gas', true)], {}, { certainty: { bonding: 'assumed' } })).toMatchObject([
      { outcome: 'not-proven' },
    ]);
  });

  it('[ST2] are asked for gas that is drawn and not recorded', () => {
    const fixtures = [fixtureOf('gas-meter', [0, 0], [300, 200])];
    expect(said([bondOf('water', true)], { fixtures })).toMatchObject([
      { outcome: 'passes' },
      { outcome: 'not-proven', messageId: 'gasNotTold', stopGate: true },
    ]);
  });

  it('[ST2] name services in words', () => {
    const facts = houseOf({
      job: { supply: { ...jobOf().supply, bonding: [bondOf('steel', true), bondOf('other', true)] } },
    });
    expect(mainBond.check(facts).map(({ values }) => values?.service)).toEqual([
      'the steelwork',
      'another service',
    ]);
  });
});
