import { describe, expect, it } from 'vitest';
import { bindsAsRing } from '#engine/circuit/binds-as.ts';
import { isUntold, nameOf } from '#engine/rules/wiring.ts';
import { circuitOf, factsOf, legOf, nodeOf, pointOf, shapeOf } from './facts-builder.ts';

describe('names for people', () => {
  const facts = factsOf({
    job: {
      circuits: [circuitOf('c', { name: 'Downstairs ring' })],
      points: [pointOf('r8', { label: 'R8' }), pointOf('r9', { label: 'R9' })],
      legs: [legOf('l1', 'r8', 'r9'), legOf('l2', 'c', 'r8')],
    },
    proposed: {
      nodes: [
        nodeOf('c', { kind: 'origin', circuitId: 'c' }),
        nodeOf('r8'),
        nodeOf('k1/joint', { kind: 'joint', inLeg: { legId: 'l1', alongMm: 600 }, connectionId: 'k1' }),
        nodeOf('k2/unit', { pointId: null, connectionId: 'k2' }),
      ],
    },
  });

  it.each([
    ['r8', 'R8'],
    ['c', 'the board (Downstairs ring)'],
    ['k1/joint', 'the joint in R8 – R9'],
    ['k2/unit', 'the new fused unit'],
    ['l2', 'Downstairs ring – R8'],
    ['nowhere', 'nowhere'],
  ])('%s is called %s', (id, name) => {
    expect(nameOf(facts, id)).toBe(name);
  });
});

describe('which circuits the rules of rings bind', () => {
  it('rings, well wired or badly, and what is only called one; never a radial', () => {
    const bound = (
      ['ring', 'broken-ring', 'lollipop', 'interconnected', 'radial', 'unknown'] as const
    ).filter((shape) => bindsAsRing(shapeOf('c', { shape })));
    expect(bound).toEqual(['ring', 'broken-ring', 'lollipop', 'interconnected']);
    expect(bindsAsRing(shapeOf('c', { shape: 'unknown', claimed: 'ring' }))).toBe(true);
    expect(bindsAsRing(shapeOf('c', { shape: 'radial', claimed: 'ring' }))).toBe(false);
  });

  it('are untold only where neither legs nor the survey say anything', () => {
    expect(isUntold(shapeOf('c', { shape: 'unknown' }))).toBe(true);
    expect(isUntold(shapeOf('c', { shape: 'unknown', claimed: 'radial' }))).toBe(false);
  });
});
