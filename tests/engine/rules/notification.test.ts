import { describe, expect, it } from 'vitest';
import { notification } from '#engine/rules/notification.ts';
import type { Room, Site } from '#model/building.ts';
import type { Connection, Remedy } from '#model/scheme.ts';
import { jobOf, saidBy, schemeOf } from './facts-builder.ts';
import { fixtureOf, type HouseLiteral, houseOf, wantedOn } from './house-builder.ts';

const radial: Connection = {
  id: 'k1',
  kind: 'radial',
  board: 'b1',
  device: { standard: 'BS-EN-60898', curve: 'B', ratingA: 20 },
  feeds: [{ from: 'origin', to: 'p' }],
};
const said = (site: Partial<Site>, house: HouseLiteral = {}) =>
  saidBy(
    notification,
    houseOf({
      points: [wantedOn(2000, 450)],
      ...house,
      job: { site: { ...jobOf().site, ...site } },
    }),
  );
const roomOf = (use: Room['use']): HouseLiteral => ({ room: { use } });

describe('notification in England', () => {
  it('[NT1] is not needed for points on a circuit, kitchens and outdoors included', () => {
    expect(said({})).toMatchObject([{ outcome: 'passes', messageId: 'notNeeded', subjectId: 's1' }]);
    expect(said({}, roomOf('kitchen'))).toMatchObject([{ messageId: 'notNeeded' }]);
    expect(said({}, roomOf('outside'))).toMatchObject([{ messageId: 'notNeeded' }]);
  });

  it('[NT1] is needed for a new circuit and a new board', () => {
    expect(said({}, { scheme: schemeOf([radial]) })).toMatchObject([
      { outcome: 'advice', messageId: 'newCircuit' },
    ]);
    const remedies: Remedy[] = [{ kind: 'new-board', at: 'b1' }];
    expect(said({}, { scheme: schemeOf([], { remedies }) })).toMatchObject([{ messageId: 'newBoard' }]);
  });

  it('[NT1] is needed within 0.6 m of a bath, not at 0.6 m', () => {
    const bathTo = (x: number): HouseLiteral => ({ fixtures: [fixtureOf('bath', [0, 0], [x, 700])] });
    expect(said({}, bathTo(1278))).toMatchObject([{ outcome: 'advice', messageId: 'specialLocation' }]);
    expect(said({}, bathTo(1277))).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[NT1] is not proven in a bathroom whose bath nobody drew', () => {
    expect(said({}, roomOf('bathroom'))).toMatchObject([
      { outcome: 'not-proven', messageId: 'bathNotDrawn' },
    ]);
  });
});

describe('notification elsewhere', () => {
  it.each(['kitchen', 'bathroom', 'outside'] as const)('[NT1] is to be decided in Wales: %s', (use) => {
    expect(said({ nation: 'wales' }, roomOf(use))).toMatchObject([
      { outcome: 'decide', messageId: 'walesOlderList' },
    ]);
  });

  it('[NT1] is not needed in a living room in Wales', () => {
    expect(said({ nation: 'wales' })).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[NT1] asks the verifier in a Scottish flat, not in a low house', () => {
    expect(said({ nation: 'scotland', premises: 'flat' })).toMatchObject([{ outcome: 'decide' }]);
    expect(said({ nation: 'scotland' }, { below: true })).toMatchObject([
      { outcome: 'passes', messageId: 'scotlandHouse' },
    ]);
  });

  it('[NT1] does not exist in Northern Ireland', () => {
    expect(said({ nation: 'northern-ireland' }, { scheme: schemeOf([radial]) })).toMatchObject([
      { outcome: 'passes', messageId: 'northernIreland' },
    ]);
  });

  it('[NT1] has nothing to say of the house as found', () => {
    expect(said({}, { scheme: null })).toEqual([]);
  });
});
