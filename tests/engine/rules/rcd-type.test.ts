import { describe, expect, it } from 'vitest';
import { rcdType } from '#engine/rules/rcd-type.ts';
import type { Device } from '#model/installation.ts';
import type { Remedy } from '#model/scheme.ts';
import {
  boardOf,
  circuitOf,
  factsOf,
  nodeOf,
  nodePlaceOf,
  pointOf,
  saidBy,
  schemeOf,
  shapeOf,
} from './facts-builder.ts';

function said(type: 'AC' | 'A' | null, remedies: Remedy[] = [], scheme = true) {
  const rcds = type === null ? [] : [{ id: 'q', type, mA: 30 }];
  return saidBy(
    rcdType,
    factsOf({
      job: {
        boards: [boardOf('b1', { rcds })],
        circuits: [circuitOf('c', type === null ? {} : { upstreamRcd: 'q' })],
        points: [pointOf('r1')],
      },
      scheme: scheme ? schemeOf([], { remedies }) : null,
      proposed: { nodes: [nodeOf('r1')] },
      shapes: [shapeOf('c', { places: [nodePlaceOf('r1')] })],
    }),
  );
}

const acDevice: Device = { standard: 'BS-EN-61009', ratingA: 32, rcd: { type: 'AC', mA: 30 } };

describe('the type of RCD', () => {
  it('[RC2] passes type A', () => {
    expect(said('A')).toEqual([
      { outcome: 'passes', messageId: 'suits', subjectId: 'c', origin: 'found', actual: 'A', limit: 'A' },
    ]);
  });

  it('[RC2] advises on a type AC found, and says that nothing is ruled', () => {
    expect(said('AC')).toMatchObject([{ outcome: 'advice', messageId: 'foundAC', origin: 'found' }]);
    expect(rcdType.messages.foundAC).toContain('No ruling');
  });

  it('[RC2] fails a type AC that the scheme fits, and takes a remedy without a device for type A', () => {
    expect(said(null, [{ kind: 'rcbo', at: 'c', device: acDevice }])).toMatchObject([
      { outcome: 'fails', messageId: 'newAC', origin: 'scheme' },
    ]);
    expect(said('AC', [{ kind: 'rcbo', at: 'c' }])).toMatchObject([{ outcome: 'passes', origin: 'scheme' }]);
  });

  it('[RC2] says nothing without an RCD or without a scheme', () => {
    expect(said(null)).toEqual([]);
    expect(said('AC', [], false)).toEqual([]);
  });
});
