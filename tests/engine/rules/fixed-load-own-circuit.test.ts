import { describe, expect, it } from 'vitest';
import { fixedLoadOwnCircuit } from '#engine/rules/fixed-load-own-circuit.ts';
import { factsOf, nodeOf, nodePlaceOf, pointOf, saidBy, shapeOf } from './facts-builder.ts';

function said(
  watts: number,
  use: string,
  { alone = false, fixed = true, fixedLoadW = undefined as number | undefined } = {},
) {
  const points = [
    pointOf('w1', { status: 'wanted', kind: 'fused-unit', load: { watts, use, fixed } }),
    ...(alone ? [] : [pointOf('r1')]),
  ];
  return saidBy(
    fixedLoadOwnCircuit,
    factsOf({
      job: { points },
      proposed: {
        nodes: [
          nodeOf('w1', { state: 'new' }),
          nodeOf('w1/load', { kind: 'load-terminals', pointId: 'w1', state: 'new' }),
          nodeOf('r1'),
        ],
      },
      limits: fixedLoadW === undefined ? {} : { fixedLoadW },
      shapes: [
        shapeOf('c', { places: ['w1', 'w1/load', ...(alone ? [] : ['r1'])].map((id) => nodePlaceOf(id)) }),
      ],
    }),
  );
}

describe('large fixed loads', () => {
  it('[FL1] passes exactly 2 kW on a shared circuit, told once for a unit’s two sides', () => {
    expect(said(2000, 'panel heater')).toEqual([
      {
        outcome: 'passes',
        messageId: 'within',
        subjectId: 'w1',
        origin: 'scheme',
        actual: 2000,
        limit: 2000,
        unit: 'W',
      },
    ]);
  });

  it('[FL1] asks for a decision past 2 kW and shows that older books had 3 kW', () => {
    expect(said(2500, 'panel heater')).toMatchObject([
      { outcome: 'decide', messageId: 'over', actual: 2500, limit: 2000 },
    ]);
    expect(said(3001, 'panel heater')).toMatchObject([{ outcome: 'decide', messageId: 'farOver' }]);
    expect(fixedLoadOwnCircuit.messages.over).toContain('Sources differ');
  });

  it('[FL1] follows the firm’s own limit', () => {
    expect(said(1600, 'panel heater', { fixedLoadW: 1500 })).toMatchObject([
      { outcome: 'decide', limit: 1500 },
    ]);
  });

  it('[FL1] wants a circuit for a hob over 2 kW, not for a small oven', () => {
    expect(said(2100, 'Induction hob')).toMatchObject([{ outcome: 'decide', messageId: 'cooker' }]);
    expect(said(2000, 'oven')).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[FL1] wants a circuit for a water heater over 15 litres', () => {
    expect(said(1500, 'water heater 15 l')).toMatchObject([{ outcome: 'passes' }]);
    expect(said(1500, 'water heater 16 litres')).toMatchObject([
      { outcome: 'decide', messageId: 'waterHeater', actual: 16 },
    ]);
    expect(said(1500, 'water heater')).toMatchObject([
      { outcome: 'not-proven', messageId: 'waterHeaterSize' },
    ]);
  });

  it('[FL1] says nothing of a load alone on its circuit, or of one that is plugged in', () => {
    expect(said(7000, 'hob', { alone: true })).toEqual([]);
    expect(said(3000, 'kettle', { fixed: false })).toEqual([]);
  });
});
