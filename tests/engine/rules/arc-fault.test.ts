import { describe, expect, it } from 'vitest';
import { arcFault } from '#engine/rules/arc-fault.ts';
import type { Site } from '#model/building.ts';
import { circuitOf, factsOf, jobOf, nodePlaceOf, pointOf, saidBy, shapeOf } from './facts-builder.ts';

const said = (premises: Site['premises'], isNew: boolean, value?: 'fitted' | 'not-fitted') => {
  const circuit = circuitOf('c');
  return saidBy(
    arcFault,
    factsOf({
      job: {
        site: { ...jobOf().site, premises },
        answers: value ? [{ question: 'arc-fault-protection', value, certainty: 'seen' }] : [],
      },
      proposed: {
        circuits: [{ id: 'c', name: 'c', board: null, device: null, circuit: isNew ? null : circuit, isNew }],
      },
      shapes: [shapeOf('c')],
    }),
  );
};

describe('arc fault detection', () => {
  it.each(['hmo', 'higher-risk', 'student', 'care'] as const)(
    '[PR1] fails a new circuit without it: %s',
    (premises) => {
      expect(said(premises, true, 'not-fitted')).toMatchObject([{ outcome: 'fails', origin: 'scheme' }]);
    },
  );

  it('[PR1] is not proven on a new circuit where nobody answered', () => {
    expect(said('hmo', true)).toMatchObject([{ outcome: 'not-proven', origin: 'scheme' }]);
  });

  it('[PR1] leaves a circuit that is there to be decided', () => {
    expect(said('hmo', false)).toMatchObject([
      { outcome: 'decide', messageId: 'foundWithout', origin: 'found' },
    ]);
  });

  it('[PR1] only recommends it in houses and flats', () => {
    expect(said('house', true)).toMatchObject([{ outcome: 'advice' }]);
    expect(said('flat', true, 'not-fitted')).toMatchObject([{ outcome: 'advice' }]);
  });

  it('[PR1] passes where it is fitted', () => {
    expect(said('care', true, 'fitted')).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[PR1] binds socket circuits only', () => {
    const cooker = factsOf({
      job: { circuits: [circuitOf('c', { use: 'cooker' })] },
      shapes: [shapeOf('c')],
    });
    expect(saidBy(arcFault, cooker)).toEqual([]);
    const heater = pointOf('h', { status: 'wanted', kind: 'fused-unit' });
    const newCircuit = (kind: 'fused-unit' | 'socket-twin') =>
      factsOf({
        job: { points: [{ ...heater, kind }] },
        shapes: [shapeOf('k1', { places: [nodePlaceOf('h')] })],
      });
    expect(saidBy(arcFault, newCircuit('fused-unit'))).toEqual([]);
    expect(saidBy(arcFault, newCircuit('socket-twin'))).toHaveLength(1);
  });
});
