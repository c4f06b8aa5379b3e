import { describe, expect, it } from 'vitest';
import { mainBond } from '#engine/rules/main-bond.ts';
import type { Supply } from '#model/installation.ts';
import type { Remedy } from '#model/scheme.ts';
import { jobOf, saidBy, schemeOf } from './facts-builder.ts';
import { fixtureOf, type HouseLiteral, houseOf } from './house-builder.ts';

type Service = Supply['bonding'][number]['service'];
const bondOf = (service: Service, seen: boolean): Supply['bonding'][number] => ({ service, seen });
/** Of these bonds alone: nothing is said of other services. */
const saidBare = (bonding: Supply['bonding'], house: HouseLiteral = {}, supply: Partial<Supply> = {}) =>
  saidBy(mainBond, houseOf({ ...house, job: { supply: { ...jobOf().supply, ...supply, bonding } } }));
/** Of these bonds where water and gas are not there unless they are among them: what is said of the others. */
const said = (bonding: Supply['bonding'], house: HouseLiteral = {}, supply: Partial<Supply> = {}) => {
  const absentServices = (['water', 'gas'] as const).filter((each) =>
    bonding.every(({ service }) => service !== each),
  );
  return saidBare(bonding, house, { absentServices, ...supply }).filter(
    ({ messageId }) => messageId !== 'absent',
  );
};

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
    expect(saidBare([])).toMatchObject([{ outcome: 'not-proven', messageId: 'nothingTold', stopGate: true }]);
    expect(saidBare([bondOf('water', true)])).toMatchObject([
      { outcome: 'passes' },
      { outcome: 'not-proven', messageId: 'notTold', stopGate: true, subjectId: 'supply/bond-gas' },
    ]);
  });

  it('[ST2] are not proven where what was said of them is assumed, and say so; one by one, or all together', () => {
    const assumed = { outcome: 'not-proven', messageId: 'assumed', stopGate: true };
    const both = [bondOf('water', true), bondOf('gas', true)];
    expect(saidBare(both, {}, { certainty: { bonding: 'assumed' } })).toMatchObject([assumed, assumed]);
    expect(saidBare(both, {}, { certainty: { 'bond-gas': 'assumed' } })).toMatchObject([
      { outcome: 'passes' },
      assumed,
    ]);
    expect(
      saidBare(both, {}, { certainty: { bonding: 'assumed', 'bond-gas': 'seen' } }).map(
        ({ messageId }) => messageId,
      ),
    ).toEqual(['assumed', 'seen']);
    expect(saidBare(both, {}, { certainty: { 'bond-gas': 'unknown' } })).toMatchObject([
      { outcome: 'passes' },
      { outcome: 'not-proven', messageId: 'notTold' },
    ]);
  });

  it('[ST2] are not wanted of a service that was seen not to be there; that it is not, by hearsay, proves nothing', () => {
    const absentServices = ['gas' as const];
    const water = [bondOf('water', true)];
    expect(saidBare(water, {}, { absentServices })).toMatchObject([
      { outcome: 'passes', messageId: 'seen' },
      { outcome: 'passes', messageId: 'absent', subjectId: 'supply/bond-gas' },
    ]);
    expect(saidBare(water, {}, { absentServices, certainty: { 'bond-gas': 'assumed' } })[1]).toMatchObject({
      outcome: 'not-proven',
      messageId: 'assumed',
    });
    const fixtures = [fixtureOf('gas-meter', [0, 0], [300, 200])];
    expect(saidBare(water, { fixtures }, { absentServices })[1]).toMatchObject({ messageId: 'gasNotTold' });
  });

  it('[ST2] are asked for gas that is drawn and not recorded', () => {
    const fixtures = [fixtureOf('gas-meter', [0, 0], [300, 200])];
    expect(saidBare([bondOf('water', true)], { fixtures })).toMatchObject([
      { outcome: 'passes' },
      { outcome: 'not-proven', messageId: 'gasNotTold', stopGate: true },
    ]);
  });

  it('[ST2] name services in words', () => {
    const facts = houseOf({
      job: {
        supply: {
          ...jobOf().supply,
          bonding: [bondOf('steel', true), bondOf('other', true)],
          absentServices: ['water', 'gas'],
        },
      },
    });
    expect(mainBond.check(facts).map(({ values }) => values?.service)).toEqual([
      'the steelwork',
      'another service',
      'water',
      'gas',
    ]);
  });
});
