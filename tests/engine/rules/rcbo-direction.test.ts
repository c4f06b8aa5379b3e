import { describe, expect, it } from 'vitest';
import { rcboDirection } from '#engine/rules/rcbo-direction.ts';
import type { Supply } from '#model/installation.ts';
import type { Scheme } from '#model/scheme.ts';
import { factsOf, jobOf, saidBy, schemeOf } from './facts-builder.ts';

const said = (supply: Partial<Supply>, scheme: Partial<Scheme> = {}) =>
  saidBy(
    rcboDirection,
    factsOf({
      job: { supply: { ...jobOf().supply, ...supply } },
      scheme: schemeOf([], { remedies: [{ kind: 'rcbo', at: 'c' }], ...scheme }),
    }),
  );

describe('direction of power through new devices', () => {
  it('[SU1] leaves a new RCBO to be decided where there are other sources', () => {
    expect(said({ otherSources: ['pv', 'battery'] })).toMatchObject([
      { outcome: 'decide', subjectId: 'c', actual: 'battery, pv', origin: 'scheme' },
    ]);
  });

  it('[SU1] passes where there are none and is not proven where that is unknown', () => {
    expect(said({})).toMatchObject([{ outcome: 'passes', messageId: 'single' }]);
    expect(said({ certainty: { otherSources: 'unknown' } })).toMatchObject([
      { outcome: 'not-proven', messageId: 'unknown' },
    ]);
    expect(said({ certainty: { otherSources: 'assumed' } })).toMatchObject([
      { outcome: 'not-proven', messageId: 'assumed' },
    ]);
  });

  it('[SU1] asks the same of a new circuit’s RCBO', () => {
    const device = { standard: 'BS-EN-61009', ratingA: 20, rcd: { type: 'A', mA: 30 } } as const;
    const connections: Scheme['connections'] = [
      { id: 'k1', kind: 'radial', board: 'b1', device, feeds: [{ from: 'origin', to: 'p' }] },
    ];
    expect(said({ otherSources: ['pv'] }, { connections, remedies: [] })).toMatchObject([
      { outcome: 'decide', subjectId: 'k1' },
    ]);
  });

  it('[SU1] is silent where no such device is fitted', () => {
    expect(said({ otherSources: ['pv'] }, { remedies: [] })).toEqual([]);
  });
});
