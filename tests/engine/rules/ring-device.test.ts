import { describe, expect, it } from 'vitest';
import { ringDevice } from '#engine/rules/ring-device.ts';
import type { Device } from '#model/installation.ts';
import type { Remedy } from '#model/scheme.ts';
import { circuitOf, factsOf, networkOf, saidBy, schemeOf, shapeOf } from './facts-builder.ts';

const breaker = (ratingA: number, curve: 'B' | 'C' | 'D' = 'B'): Device => ({
  standard: 'BS-EN-60898',
  curve,
  ratingA,
});
const rcbo = (ratingA: number): Device => ({
  standard: 'BS-EN-61009',
  curve: 'B',
  ratingA,
  rcd: { type: 'A', mA: 30 },
});

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

/** What is said when a scheme changes the device found for another. */
function saidOfChange(before: Device | null, after: Device, remedies: Remedy[] = []) {
  const ends = (device: Device | null) =>
    networkOf({ circuits: [{ id: 'c', name: 'c', board: null, device, circuit: null, isNew: false }] });
  return saidBy(
    ringDevice,
    factsOf({
      shapes: [shapeOf('c')],
      found: ends(before),
      proposed: ends(after),
      scheme: schemeOf([], { remedies }),
    }),
  );
}

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
      { outcome: 'fails', messageId: 'tooLarge', actual: 40, limit: 32, origin: 'found' },
    ]);
  });

  it.each([16, 20, 25])('[DV1] advises on %d A', (ratingA) => {
    expect(said(breaker(ratingA))).toMatchObject([
      { outcome: 'advice', messageId: 'smaller', actual: ratingA },
    ]);
  });

  it.each(['C', 'D'] as const)('[DV1] says one thing of the rating of a type %s', (curve) => {
    expect(said(breaker(32, curve))).toMatchObject([{ outcome: 'passes' }]);
    expect(said(breaker(40, curve))).toMatchObject([{ outcome: 'fails' }]);
  });

  it('[DV1] lays a 40 A RCBO that the scheme fits to the scheme, whatever was there', () => {
    const remedies: Remedy[] = [{ kind: 'rcbo', at: 'c', device: rcbo(40) }];
    for (const before of [breaker(32), breaker(40), rcbo(40), null])
      expect(saidOfChange(before, rcbo(40), remedies)).toMatchObject([
        { outcome: 'fails', messageId: 'tooLarge', actual: 40, origin: 'scheme' },
      ]);
  });

  it('[DV1] leaves 40 A that the scheme does not touch to what was found', () => {
    expect(saidOfChange(breaker(40), breaker(40), [{ kind: 'rcbo', at: 'other' }])).toMatchObject([
      { outcome: 'fails', origin: 'found' },
    ]);
  });

  it('[DV1] passes when the scheme lowers 40 A to 32 A, and advises at 20 A', () => {
    expect(saidOfChange(breaker(40), breaker(32))).toMatchObject([
      { outcome: 'passes', actual: 32, origin: 'scheme' },
    ]);
    expect(saidOfChange(breaker(40), breaker(20))).toMatchObject([
      { outcome: 'advice', messageId: 'smaller', actual: 20, origin: 'scheme' },
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
