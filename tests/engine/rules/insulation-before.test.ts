import { describe, expect, it } from 'vitest';
import { insulationBefore } from '#engine/rules/insulation-before.ts';
import type { Reading } from '#model/installation.ts';
import { circuitOf, factsOf, saidBy, shapeOf } from './facts-builder.ts';

type Insulation = Extract<Reading, { kind: 'insulation' }>;
const readingOf = (megohm: number, partial: Partial<Insulation> = {}): Insulation => ({
  id: 'i1',
  circuit: 'c',
  kind: 'insulation',
  phase: 'before',
  between: 'LN-cpc',
  megohm,
  testV: 500,
  ...partial,
});
const said = (...readings: Reading[]) =>
  saidBy(
    insulationBefore,
    factsOf({ job: { circuits: [circuitOf('c')], readings }, shapes: [shapeOf('c')] }),
  );

describe('insulation before adding', () => {
  it('[ST4] passes at exactly 1 MΩ and shuts the gate just below', () => {
    expect(said(readingOf(1))).toMatchObject([{ outcome: 'passes', actual: 1, limit: 1, unit: 'MΩ' }]);
    expect(said(readingOf(0.99))).toMatchObject([
      { outcome: 'fails', stopGate: true, actual: 0.99, origin: 'found' },
    ]);
  });

  it('[ST4] goes by the lowest reading', () => {
    expect(said(readingOf(200), readingOf(0.5, { id: 'i2' }))).toMatchObject([
      { outcome: 'fails', actual: 0.5 },
    ]);
  });

  it('[ST4] is a hold point where nobody measured this circuit before the work', () => {
    expect(said()).toMatchObject([{ outcome: 'advice', messageId: 'hold' }]);
    expect(said(readingOf(0.5, { phase: 'after' }), readingOf(0.5, { circuit: 'd' }))).toMatchObject([
      { messageId: 'hold' },
    ]);
  });

  it('[ST4] advises where the test voltage was low', () => {
    expect(said(readingOf(50, { testV: 250 }))).toMatchObject([
      { outcome: 'advice', messageId: 'lowVoltage' },
    ]);
  });
});
