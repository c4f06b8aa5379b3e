import { describe, expect, it } from 'vitest';
import { circuitPicture } from '#drawing/proof/circuit-picture.ts';
import { plugFuseLimit } from '#engine/proof/loop-limit.ts';
import { roomLeft } from '#engine/proof/room-left.ts';
import { estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { boilerSpur } from './boiler-spur.ts';

describe('a fuse that is chosen by its load', () => {
  const scheme = schemeOf(estimateOf(boilerSpur()), 's');
  const [proof] = scheme.proof;

  it('is 3 A for a boiler of 150 W in kit and points', () => {
    expect(scheme.fusedUnits.map(({ fuseA }) => fuseA)).toEqual([3]);
  });

  it('is the same in what the comparison says is left', () => {
    const [room] = roomLeft(scheme.worked);
    expect(room).toMatchObject({ limitedBy: 'fuse', limitA: 3 });
    expect(room?.leftA).toBeCloseTo(3 - 150 / 230, 9);
  });

  it('is the same in the picture, and no limit of the loop at the unit itself', () => {
    const boiler = proof?.points.find(({ point }) => point.startsWith('boiler'));
    expect(boiler?.zsMaxOhm).toBe(proof?.limit.maximumOhm);
    expect(boiler?.zsMaxOhm).toBeLessThan(plugFuseLimit(3)?.maximumOhm ?? 0);
    const picture = proof && circuitPicture(scheme.worked, proof);
    expect(picture?.nodes.find(({ subject }) => subject === 'boiler')?.fuseA).toBe(3);
  });

  it('lets no more than 3 A through in the proof', () => {
    const fuse = proof?.legs.find(({ leg }) => leg === 'boiler/fuse');
    expect(fuse?.currentA).toBeGreaterThan(0);
    expect(fuse?.currentA).toBeLessThanOrEqual(3 + 1e-9);
  });
});
