import { describe, expect, it } from 'vitest';
import type { CircuitShape } from '#engine/circuit/shape.ts';
import { ringContinuity } from '#engine/rules/ring-continuity.ts';
import type { Reading } from '#model/installation.ts';
import { factsOf, saidBy, shapeOf } from './facts-builder.ts';

const endToEnd = (loop: 'L' | 'N' | 'cpc', ohm: number, phase: 'before' | 'after' = 'before'): Reading => ({
  id: `read-${loop}`,
  circuit: 'c',
  phase,
  kind: 'loop',
  loop,
  from: 'end-to-end',
  ohm,
});

const said = (
  shape: Partial<CircuitShape>,
  readings: readonly Reading[] = [],
  before: Partial<CircuitShape> = shape,
) =>
  saidBy(
    ringContinuity,
    factsOf({
      job: { readings: [...readings] },
      shapes: [shapeOf('c', shape)],
      foundShapes: [shapeOf('c', before)],
    }),
  );

describe('the ring closed and proved', () => {
  it('[RG1] passes a ring whose order is proved', () => {
    expect(said({ evidence: 'proved' })).toEqual([
      { outcome: 'passes', messageId: 'proved', subjectId: 'c', origin: 'found' },
    ]);
  });

  it('[RG1] shuts the gate on an unproved ring: not proven, not passed', () => {
    const shut = [
      { outcome: 'not-proven', messageId: 'unproved', subjectId: 'c', origin: 'found', stopGate: true },
    ];
    expect(said({ evidence: 'recorded' })).toEqual(shut);
    expect(said({ shape: 'unknown', claimed: 'ring', evidence: 'claimed' })).toEqual(shut);
  });

  it('[RG1] follows the latest reading before the work, never one after it', () => {
    const early = { ...endToEnd('N', 999), id: 'early', takenOn: '2025-01-02' };
    const late = { ...endToEnd('N', 0.5), id: 'late', takenOn: '2025-03-04' };
    expect(said({}, [late, early])).toMatchObject([{ outcome: 'passes' }]);
    expect(said({}, [endToEnd('N', 999, 'after')])).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[RG1] asks for a decision where line and neutral differ by more than 0.05 Ω', () => {
    expect(said({}, [endToEnd('L', 0.45), endToEnd('N', 0.5)])).toMatchObject([{ outcome: 'passes' }]);
    expect(said({}, [endToEnd('L', 0.45), endToEnd('N', 0.51)])).toMatchObject([
      { outcome: 'decide', messageId: 'loopsDiffer', actual: 0.06, limit: 0.05 },
    ]);
  });

  it('[RG1] shuts the gate on an open loop whatever the legs say', () => {
    expect(said({}, [endToEnd('N', 999)])).toMatchObject([
      { outcome: 'fails', messageId: 'openLoop', actual: 999, stopGate: true },
    ]);
  });

  it.each([
    ['broken-ring', 'broken'],
    ['lollipop', 'lollipop'],
    ['interconnected', 'interconnected'],
  ] as const)('[RG1] fails a shape of %s and shuts the gate', (shape, messageId) => {
    expect(said({ shape })).toEqual([
      { outcome: 'fails', messageId, subjectId: 'c', origin: 'found', stopGate: true },
    ]);
  });

  it('[RG1] lays a ring that the scheme breaks to the scheme', () => {
    expect(said({ shape: 'broken-ring' }, [], { shape: 'ring' })).toMatchObject([
      { outcome: 'fails', origin: 'scheme' },
    ]);
  });

  it('[RG1] is not proven where nobody says what the circuit is, and silent on a radial', () => {
    expect(said({ shape: 'unknown', claimed: null })).toMatchObject([
      { outcome: 'not-proven', messageId: 'untold' },
    ]);
    expect(said({ shape: 'radial' })).toEqual([]);
    expect(said({ shape: 'unknown', claimed: 'radial' })).toEqual([]);
  });
});
