import { describe, expect, it } from 'vitest';
import { ringDevice } from '#engine/rules/ring-device.ts';
import type { Device } from '#model/installation.ts';
import { circuitOf, factsOf, saidBy, schemeOf, shapeOf } from './facts-builder.ts';

function said(device: Device | undefined, shape: 'ring' | 'radial' = 'ring', scheme = false) {
  const { device: _, ...bare } = circuitOf('c');
  return saidBy(
    ringDevice,
    factsOf({
      job: { circuits: [device === undefined ? bare : { ...bare, device }] },
      shapes: [shapeOf('c', { shape })],
      scheme: scheme ? schemeOf() : null,
    }),
  );
}

const breaker = (ratingA: number, curve: 'B' | 'C' | 'D' = 'B'): Device => ({
  standard: 'BS-EN-60898',
  curve,
  ratingA,
});

describe('the device of a ring', () => {
  it('[DV1] passes at exactly 32 A', () => {
    expect(said(breaker(32))).toEqual([
      {
        outcome: 'passes',
        messageId: 'usual',
        subjectId: 'c',
        origin: 'found',
        actual: 32,
        limit: 32,
        unit: 'A',
      },
    ]);
  });

  it('[DV1] passes a 30 A rewireable fuse', () => {
    expect(said({ standard: 'BS-3036', ratingA: 30 })).toMatchObject([{ outcome: 'passes', actual: 30 }]);
  });

  it('[DV1] fails above 32 A', () => {
    expect(said(breaker(40))).toMatchObject([
      { outcome: 'fails', messageId: 'tooLarge', actual: 40, limit: 32 },
    ]);
  });

  it.each([16, 20, 25])('[DV1] advises on %d A', (ratingA) => {
    expect(said(breaker(ratingA))).toMatchObject([
      { outcome: 'advice', messageId: 'smaller', actual: ratingA },
    ]);
  });

  it.each(['C', 'D'] as const)('[DV1] calls curve %s a Zs question', (curve) => {
    expect(said(breaker(32, curve))).toMatchObject([
      { outcome: 'passes' },
      { outcome: 'advice', messageId: 'lessSensitive', actual: curve },
    ]);
  });

  it('[DV1] is not proven without a device, by the scheme that joins on to it', () => {
    expect(said(undefined)).toMatchObject([{ outcome: 'not-proven', messageId: 'unknown', origin: 'found' }]);
    expect(said(undefined, 'ring', true)).toMatchObject([{ outcome: 'not-proven', origin: 'scheme' }]);
  });

  it('[DV1] says nothing of a radial', () => {
    expect(said(breaker(40), 'radial')).toEqual([]);
  });
});
