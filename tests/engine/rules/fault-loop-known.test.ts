import { describe, expect, it } from 'vitest';
import { faultLoopKnown } from '#engine/rules/fault-loop-known.ts';
import type { Reading, Supply } from '#model/installation.ts';
import { boardOf, circuitOf, factsOf, pointOf, saidBy, schemeOf, shapeOf } from './facts-builder.ts';

const reading = (kind: 'ze' | 'zs', ohm: number, id = 'r'): Reading => ({
  id,
  kind,
  phase: 'before',
  ohm,
  ...(kind === 'zs' ? { circuit: 'c', at: 'p1' } : {}),
});

const supplyOf = (supply: Partial<Supply>): Supply => ({
  earthing: 'TN-C-S',
  nominalV: 230,
  bonding: [],
  otherSources: [],
  ...supply,
});

const said = (supply: Partial<Supply>, readings: Reading[] = [], zdbOhm?: number) =>
  saidBy(
    faultLoopKnown,
    factsOf({
      job: {
        supply: supplyOf(supply),
        readings,
        boards: [boardOf('b1', zdbOhm === undefined ? {} : { zdbOhm })],
        circuits: [circuitOf('c')],
        points: [pointOf('p1')],
      },
      shapes: [shapeOf('c')],
      scheme: schemeOf(),
    }),
  );

describe('the fault loop before the circuit', () => {
  it('[SU7] is not proven, by the scheme, where nobody measured it', () => {
    expect(said({})).toEqual([
      { outcome: 'not-proven', messageId: 'unknown', subjectId: 'supply', origin: 'scheme' },
    ]);
    expect(said({ zeOhm: 0.2, certainty: { zeOhm: 'unknown' } })).toMatchObject([{ messageId: 'unknown' }]);
  });

  it('[SU7] takes an assumed value for no measurement', () => {
    expect(said({ zeOhm: 0.35, certainty: { zeOhm: 'assumed' } })).toMatchObject([
      { outcome: 'not-proven', messageId: 'assumed', actual: 0.35 },
    ]);
  });

  // Distributors' declared maxima: 0.35 Ω TN-C-S, 0.8 Ω TN-S. Source: IET On-Site Guide (from memory).
  it.each([
    ['TN-C-S', 0.35],
    ['TN-S', 0.8],
  ] as const)('[SU7] passes %s at %d Ω exactly and advises above it', (earthing, limit) => {
    expect(said({ earthing, zeOhm: limit })).toMatchObject([
      { outcome: 'passes', messageId: 'known', actual: limit, limit, unit: 'Ω' },
    ]);
    expect(said({ earthing, zeOhm: limit + 0.01 })).toMatchObject([
      { outcome: 'advice', messageId: 'high', limit },
    ]);
  });

  // BS 7671 411.5.3: 30 mA through 1666.7 Ω is 50 V; the note to Table 41.5 doubts electrodes above 200 Ω.
  it('[SU7] holds an electrode against 50 V at 30 mA', () => {
    const tt = (zeOhm: number) => said({ earthing: 'TT', zeOhm });
    expect(tt(200)).toMatchObject([{ outcome: 'passes', messageId: 'electrode', limit: 50 }]);
    expect(tt(201)).toMatchObject([{ outcome: 'advice', messageId: 'unstable' }]);
    expect(tt(1666)).toMatchObject([{ outcome: 'advice', messageId: 'unstable' }]);
    expect(tt(1667)).toMatchObject([{ outcome: 'fails', messageId: 'electrodeHigh', origin: 'scheme' }]);
  });

  it('[SU7] takes a reading of Ze, the worst of several, before what is known at the board', () => {
    expect(said({}, [reading('ze', 0.2, 'a'), reading('ze', 0.3, 'b')], 0.5)).toMatchObject([
      { outcome: 'passes', actual: 0.3 },
    ]);
    expect(said({}, [], 0.33)).toMatchObject([{ outcome: 'passes', messageId: 'known', actual: 0.33 }]);
    expect(said({}, [], 0.36)).toMatchObject([{ outcome: 'advice', actual: 0.36 }]);
  });

  it('[SU7] passes by the highest Zs of the circuits touched, which holds no declared maximum', () => {
    expect(said({}, [reading('zs', 0.6, 'a'), reading('zs', 1.2, 'b')])).toMatchObject([
      { outcome: 'passes', messageId: 'viaZs', actual: 1.2 },
    ]);
    expect(said({}, [{ ...reading('zs', 0.6), circuit: 'other' }])).toMatchObject([{ messageId: 'unknown' }]);
  });

  it('[SU7] passes on a value without the kind of earthing, and is an observation of a house as found', () => {
    const { earthing: _, ...bare } = supplyOf({ zeOhm: 9 });
    const facts = factsOf({ job: { supply: bare }, scheme: null });
    expect(saidBy(faultLoopKnown, facts)).toMatchObject([
      { outcome: 'passes', messageId: 'viaZs', origin: 'found' },
    ]);
  });
});
