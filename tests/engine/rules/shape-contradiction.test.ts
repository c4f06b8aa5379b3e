import { describe, expect, it } from 'vitest';
import type { CircuitShape } from '#engine/circuit/shape.ts';
import { shapeContradiction } from '#engine/rules/shape-contradiction.ts';
import type { Point } from '#model/installation.ts';
import { edgeOf, factsOf, nodeOf, nodePlaceOf, pointOf, saidBy, shapeOf } from './facts-builder.ts';

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

/** What is said of R1, to which the legs bring two cables of the ring. */
function saidOfPlate(
  asFound: Point['asFound'],
  partial: Partial<Point> = {},
  shape: Partial<CircuitShape> = {},
) {
  return saidBy(
    shapeContradiction,
    factsOf({
      job: { points: [pointOf('r1', { ...(asFound === undefined ? {} : { asFound }), ...partial })] },
      proposed: {
        nodes: [nodeOf('c', { kind: 'origin' }), nodeOf('r1')],
        edges: [edgeOf('l1', 'c', 'r1'), edgeOf('l2', 'r1', 'c')],
      },
      shapes: [shapeOf('c', { places: [nodePlaceOf('r1')], ...shape })],
    }),
  );
}

describe('what a plate showed against the legs', () => {
  it('[RG2] says nothing where the cables seen are the cables of the legs', () => {
    expect(saidOfPlate({ cablesSeen: 2, role: 'ring' })).toEqual([]);
  });

  it('[RG2] asks for a decision where one cable was seen and the legs give two', () => {
    expect(saidOfPlate({ cablesSeen: 1 })).toEqual([
      {
        outcome: 'decide',
        messageId: 'fewer',
        subjectId: 'r1',
        origin: 'found',
        actual: 1,
        limit: 2,
        unit: 'cables',
      },
    ]);
  });

  it('[RG2] is not proven where three were seen: a spur may not be recorded', () => {
    expect(saidOfPlate({ cablesSeen: 3 })).toMatchObject([
      { outcome: 'not-proven', messageId: 'more', actual: 3, limit: 2 },
    ]);
  });

  it('[RG2] asks for a decision where the plate was taken for a spur and the legs put it in the ring', () => {
    expect(saidOfPlate({ cablesSeen: 2, role: 'spur' })).toMatchObject([
      { outcome: 'decide', messageId: 'calledSpur', subjectId: 'r1' },
    ]);
    const spur = { places: [nodePlaceOf('r1', { role: 'unfused-spur' })] };
    expect(saidOfPlate({ role: 'ring' }, {}, spur)).toMatchObject([{ messageId: 'calledRing' }]);
    expect(saidOfPlate({ role: 'spur' }, {}, spur)).toEqual([]);
  });

  it('[RG2] says one thing of a plate that contradicts twice', () => {
    expect(saidOfPlate({ cablesSeen: 1, role: 'spur' })).toMatchObject([{ messageId: 'fewer' }]);
  });

  it('[RG2] holds no guess, no wanted point and no unseen plate against the legs', () => {
    expect(saidOfPlate(undefined)).toEqual([]);
    expect(saidOfPlate({ cablesSeen: 1 }, { certainty: { cablesSeen: 'assumed' } })).toEqual([]);
    expect(saidOfPlate({ role: 'spur' }, { certainty: { asFound: 'unknown' } })).toEqual([]);
    expect(saidOfPlate({ cablesSeen: 1 }, { status: 'wanted' })).toEqual([]);
  });

  it('[RG2] leaves the place on a circuit that is no ring to the circuit’s own question', () => {
    expect(saidOfPlate({ role: 'spur' }, {}, { shape: 'broken-ring' })).toEqual([]);
  });

  it('[RG2] has nothing to hold against points that no leg reaches', () => {
    const facts = factsOf({
      job: { points: [pointOf('r1', { asFound: { cablesSeen: 1 } })] },
      proposed: { nodes: [nodeOf('r1')] },
      shapes: [shapeOf('c', { places: [nodePlaceOf('r1', { role: 'claimed-ring' })] })],
    });
    expect(saidBy(shapeContradiction, facts)).toEqual([]);
  });
});
