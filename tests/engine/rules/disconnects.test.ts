import { describe, expect, it } from 'vitest';
import type { CircuitProof } from '#engine/proof/circuit-proof.ts';
import { disconnects } from '#engine/rules/disconnects.ts';
import { saidBy } from './facts-builder.ts';
import { pointProofOf, proofOf, provedFacts } from './proof-facts.ts';

const at = (zsHotOhm: number | null): Partial<CircuitProof> => ({
  points: [pointProofOf('p', { zsHotOhm })],
});
const { limit } = proofOf();
const said = (now: Partial<CircuitProof>, before: Partial<CircuitProof> = {}) =>
  saidBy(disconnects, provedFacts(now, before));

describe('disconnection in a fault', () => {
  it('[ZS1] passes at exactly the limit, and fails above', () => {
    expect(said(at(1.37))).toMatchObject([{ outcome: 'passes', subjectId: 'p', actual: 1.37, limit: 1.37 }]);
    expect(said(at(1.38))).toMatchObject([{ outcome: 'fails', messageId: 'over', origin: 'scheme' }]);
    expect(said(at(1.5), at(1.5))).toMatchObject([{ outcome: 'fails', origin: 'found' }]);
  });

  // BS 7671 411.4.204: where an RCD disconnects, its own limit counts (from memory).
  it('[ZS1] is advice where the circuit’s RCD disconnects what its breaker would not', () => {
    const rcd = { limit: { ...limit, rcdOhm: 1667 } };
    expect(said({ ...at(1.5), ...rcd })).toMatchObject([{ outcome: 'advice', messageId: 'byRcd' }]);
    expect(said({ ...at(1700), ...rcd })).toMatchObject([{ outcome: 'fails' }]);
  });

  it('[ZS1] fails on TT above what its RCD allows', () => {
    const tt = { limit: { ...limit, by: 'rcd', maximumOhm: 1667, rcdOhm: 1667 } } as const;
    const points = [pointProofOf('p', { zsHotOhm: 1700, zsMaxOhm: 1667 })];
    expect(said({ points, ...tt })).toMatchObject([{ outcome: 'fails', limit: 1667 }]);
  });

  it('[ZS1] is not proven without the device, the loop before it, the cables, or all lengths', () => {
    const noDevice = { limit: { ...limit, by: null, maximumOhm: null } };
    expect(said(noDevice)).toMatchObject([{ outcome: 'not-proven', messageId: 'noDevice', subjectId: 'c' }]);
    expect(said({ source: { ohm: null, from: null } })).toMatchObject([{ messageId: 'noLoop' }]);
    expect(said({ source: { ohm: 0.35, from: 'assumed' } })).toMatchObject([
      { outcome: 'not-proven', messageId: 'noLoop' },
    ]);
    expect(said(at(null))).toMatchObject([{ outcome: 'not-proven', messageId: 'noLoopConductor' }]);
    expect(said({ points: [] })).toMatchObject([{ outcome: 'not-proven', messageId: 'untold' }]);
    expect(said({ ...at(0.5), isWhole: false })).toMatchObject([
      { outcome: 'not-proven', messageId: 'notWhole' },
    ]);
    expect(said({ ...at(1.5), isWhole: false })).toMatchObject([
      { outcome: 'not-proven', messageId: 'notWholeOver' },
    ]);
  });

  it('[ZS1] tells the point that takes up most of its own limit', () => {
    const points = [
      pointProofOf('p', { zsHotOhm: 1.2, zsMaxOhm: 1.37 }),
      pointProofOf('u', { zsHotOhm: 1.3, zsMaxOhm: 15.6 }),
    ];
    expect(said({ points })).toMatchObject([{ subjectId: 'p' }]);
  });
});
