import { describe, expect, it } from 'vitest';
import { demoEstimate, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { circuitOf, shownProof } from '../../../ui/elements/proof/circuit-of.ts';

const { proof } = schemeOf(demoEstimate('saltglass-row-quoting'), 'new-radial');

describe('the circuit of a thing', () => {
  it('is the one with the cable, the point, or the name', () => {
    expect(circuitOf(proof, 'c4-radial1/circuit')).toBe('c4-radial1/circuit');
    expect(circuitOf(proof, 'c4-radial1/cable-1')).toBe('c4-radial1/circuit');
    expect(circuitOf(proof, 'w4-boiler1')).toBe('ring-house');
  });

  it('is none for what is of no circuit', () => {
    expect(circuitOf(proof, 'supply')).toBeNull();
    expect(circuitOf([], 'ring-house')).toBeNull();
  });
});

describe('the circuit that a picture shows', () => {
  it('is the one that was asked for', () => {
    expect(shownProof(proof, 'ring-house')?.circuit).toBe('ring-house');
  });

  it('is the first with cables where none was asked for, or one that is gone', () => {
    const bare = proof.map((one, i) => (i === 0 ? { ...one, legs: [] } : one));
    expect(shownProof(bare, null)?.circuit).toBe(bare[1]?.circuit);
    expect(shownProof(bare, 'gone')?.circuit).toBe(bare[1]?.circuit);
    expect(shownProof([], null)).toBeNull();
  });
});
