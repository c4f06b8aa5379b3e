import { describe, expect, it } from 'vitest';
import { deviceCurve } from '#engine/rules/device-curve.ts';
import type { Device } from '#model/installation.ts';
import { circuitOf, factsOf, networkOf, saidBy, schemeOf, shapeOf } from './facts-builder.ts';

const deviceOf = (curve: Device['curve'], standard: Device['standard'] = 'BS-EN-60898'): Device => ({
  standard,
  ratingA: 32,
  ...(curve === undefined ? {} : { curve }),
});

const said = (device: Device, shape: 'ring' | 'radial' = 'ring') =>
  saidBy(
    deviceCurve,
    factsOf({ job: { circuits: [circuitOf('c', { device })] }, shapes: [shapeOf('c', { shape })] }),
  );

describe('the type of the breaker', () => {
  it.each(['C', 'D', '2', '3'] as const)(
    '[DV4] calls type %s a Zs question, of rings and radials',
    (curve) => {
      for (const shape of ['ring', 'radial'] as const)
        expect(said(deviceOf(curve), shape)).toEqual([
          {
            outcome: 'advice',
            messageId: 'lessSensitive',
            subjectId: 'c',
            origin: 'found',
            actual: curve,
            limit: 'B',
          },
        ]);
    },
  );

  it.each(['B', '1', undefined] as const)('[DV4] is silent on type %s', (curve) => {
    expect(said(deviceOf(curve))).toEqual([]);
  });

  it('[DV4] lays a type C that the scheme fits to the scheme', () => {
    const circuit = { id: 'c', name: 'c', board: null, circuit: null, isNew: false };
    const facts = factsOf({
      shapes: [shapeOf('c')],
      found: networkOf({ circuits: [{ ...circuit, device: deviceOf('B') }] }),
      proposed: networkOf({ circuits: [{ ...circuit, device: deviceOf('C') }] }),
      scheme: schemeOf(),
    });
    expect(saidBy(deviceCurve, facts)).toMatchObject([{ outcome: 'advice', origin: 'scheme' }]);
  });

  it('[DV4] is silent where the device is not known', () => {
    expect(saidBy(deviceCurve, factsOf({ shapes: [shapeOf('c')] }))).toEqual([]);
  });
});
