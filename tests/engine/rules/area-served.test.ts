import { describe, expect, it } from 'vitest';
import { areaServed } from '#engine/rules/area-served.ts';
import type { Circuit } from '#model/installation.ts';
import { circuitOf, factsOf, saidBy, shapeOf } from './facts-builder.ts';

const said = (circuit: Partial<Circuit>, shape: 'ring' | 'radial' = 'ring', areaServedM2?: number) =>
  saidBy(
    areaServed,
    factsOf({
      job: { circuits: [circuitOf('c', circuit)] },
      shapes: [shapeOf('c', { shape })],
      limits: areaServedM2 === undefined ? {} : { areaServedM2 },
    }),
  );

const device = (ratingA: number) => ({ standard: 'BS-EN-60898', ratingA }) as const;

describe('the floor area of a circuit', () => {
  it('[RG3] passes a ring at exactly 100 m² and asks for a decision past it', () => {
    expect(said({ areaServedM2: 100 })).toEqual([
      {
        outcome: 'passes',
        messageId: 'within',
        subjectId: 'c',
        origin: 'found',
        actual: 100,
        limit: 100,
        unit: 'm²',
      },
    ]);
    expect(said({ areaServedM2: 101 })).toMatchObject([{ outcome: 'decide', messageId: 'over' }]);
  });

  it('[RG3] has 75 m² for a 32 A radial and 50 m² for a 20 A one', () => {
    expect(said({ areaServedM2: 75 }, 'radial')).toMatchObject([{ outcome: 'passes', limit: 75 }]);
    expect(said({ areaServedM2: 51, device: device(20) }, 'radial')).toMatchObject([
      { outcome: 'decide', limit: 50 },
    ]);
  });

  it('[RG3] follows the firm’s own limit', () => {
    expect(said({ areaServedM2: 81 }, 'ring', 80)).toMatchObject([{ outcome: 'decide', limit: 80 }]);
  });

  it('[RG3] is not proven where the area was not told', () => {
    expect(said({})).toMatchObject([{ outcome: 'not-proven', messageId: 'notTold', limit: 100 }]);
  });

  it('[RG3] says nothing of a cooker circuit', () => {
    expect(said({ use: 'cooker', areaServedM2: 500 })).toEqual([]);
  });
});
