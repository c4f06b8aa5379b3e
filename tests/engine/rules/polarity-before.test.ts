import { describe, expect, it } from 'vitest';
import { polarityBefore } from '#engine/rules/polarity-before.ts';
import type { Reading } from '#model/installation.ts';
import { boardOf, circuitOf, factsOf, pointOf, saidBy, shapeOf } from './facts-builder.ts';

type Polarity = Extract<Reading, { kind: 'polarity' }>;
const readingOf = (at: string, ok: boolean, partial: Partial<Polarity> = {}): Polarity => ({
  id: `p-${at}`,
  kind: 'polarity',
  phase: 'before',
  at,
  ok,
  ...partial,
});
const said = (...readings: Reading[]) =>
  saidBy(
    polarityBefore,
    factsOf({
      job: {
        boards: [boardOf('b1', { label: 'Consumer unit' })],
        circuits: [circuitOf('c')],
        points: [pointOf('r1', { circuit: 'c' }), pointOf('x')],
        readings,
      },
      shapes: [shapeOf('c')],
    }),
  );

describe('polarity before adding', () => {
  it('[ST5] shuts the gate where it is wrong at a point of the circuit or at its board', () => {
    expect(said(readingOf('r1', false))).toMatchObject([{ outcome: 'fails', stopGate: true, actual: 'R1' }]);
    expect(said(readingOf('b1', false))).toMatchObject([{ outcome: 'fails', actual: 'Consumer unit' }]);
  });

  it('[ST5] passes where it was tested and right', () => {
    expect(said(readingOf('r1', true))).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[ST5] is a hold point where nobody tested this circuit before the work', () => {
    expect(said()).toMatchObject([{ outcome: 'advice', messageId: 'hold' }]);
    expect(said(readingOf('x', false), readingOf('r1', false, { phase: 'after' }))).toMatchObject([
      { messageId: 'hold' },
    ]);
  });
});
