import { describe, expect, it } from 'vitest';
import { demoEstimate, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { joinedIn } from '../../../ui/elements/wanted/joined-words.ts';

const terrace = demoEstimate('saltglass-row');
const semi = demoEstimate('fernlow-close');

describe('how a wanted point is joined', () => {
  it.each([
    [terrace, 'spurs-rcbo', 'w1-living1', 'c1-w1-spur', 'Spur from R1', 1],
    [terrace, 'spurs-rcbo', 'w2-bedroom', 'c1-w2-spur', 'Spur from a joint in R8–R9', 1],
    [terrace, 'spurs-rcbo', 'w4-boiler1', 'c1-w4-fuse', 'Fused spur from R6', 1],
    [terrace, 'fused-beds', 'w3-bedroom', 'c5-beds-fu', 'Behind a fuse, from the fused unit', 1],
    [terrace, 'ring-to-w2', 'w2-bedroom', 'c2-w2-ring', 'On the ring, between R8 and R9', 2],
    [semi, 'fused-unit', 'b2-kitchen', 'c1-fused-b', 'Behind a fuse, from B1', 1],
    [semi, 'new-radial', 'b3-kitchen', 'c4-radial1', 'New radial, from the board', 1],
    [semi, 'new-radial', 'b2-kitchen', 'c4-radial1', 'New radial, from B3', 1],
  ] as const)(
    'is told by its connection, what it comes from and its cables',
    (estimate, scheme, point, ...told) => {
      const joined = joinedIn(schemeOf(estimate, scheme), point);
      expect([joined?.connectionId, joined?.words, joined?.cablesMm.length]).toEqual(told);
    },
  );

  it('counts the cables that the scheme lays to it', () => {
    const scheme = schemeOf(terrace, 'ring-to-w2');
    const joined = joinedIn(scheme, 'w2-bedroom');
    const laid = scheme.runs
      .filter(({ connectionId }) => connectionId === 'c2-w2-ring')
      .map(({ lengthMm }) => lengthMm);
    expect(joined?.cablesMm).toEqual(laid);
  });

  it('is nothing where no connection of the scheme joins it', () => {
    expect(joinedIn(schemeOf(terrace, 'spurs-rcbo'), 'r4-dining1')).toBeNull();
  });
});
