import { describe, expect, it } from 'vitest';
import { shapeContradiction } from '#engine/rules/shape-contradiction.ts';
import { factsOf, saidBy, shapeOf } from './facts-builder.ts';

describe('the survey against the legs', () => {
  it('[RG2] asks for a decision where a ring by name is a radial by its legs', () => {
    const facts = factsOf({
      shapes: [shapeOf('c', { shape: 'radial', claimed: 'ring', contradicts: true })],
    });
    expect(saidBy(shapeContradiction, facts)).toEqual([
      {
        outcome: 'decide',
        messageId: 'contradicts',
        subjectId: 'c',
        origin: 'found',
        actual: 'radial',
        limit: 'ring',
      },
    ]);
  });

  it('[RG2] says nothing where they agree or nothing is claimed', () => {
    const facts = factsOf({ shapes: [shapeOf('c', { claimed: 'ring' }), shapeOf('d')] });
    expect(saidBy(shapeContradiction, facts)).toEqual([]);
  });
});
