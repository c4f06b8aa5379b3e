import { describe, expect, it } from 'vitest';
import { cableAfterFuse } from '#engine/rules/cable-after-fuse.ts';
import {
  capacityOf,
  edgeOf,
  factsOf,
  nodeOf,
  nodePlaceOf,
  saidBy,
  shapeOf,
  twinOf,
  unitOf,
} from './facts-builder.ts';

function facts(lineMm2: number, izA: number | null, fuseA: number | null, method = 'C') {
  return factsOf({
    proposed: {
      nodes: [nodeOf('u'), nodeOf('u/load', { kind: 'load-terminals', pointId: 'u' }), nodeOf('w1')],
      edges: [edgeOf('e1', 'u/load', 'w1', { state: 'new', cable: twinOf(lineMm2) })],
    },
    capacities: [capacityOf('e1', { izA, method })],
    things: { fusedUnits: [unitOf('u', { fuseA })] },
    shapes: [
      shapeOf('c', {
        places: [
          nodePlaceOf('w1', {
            role: 'behind-fuse',
            upstreamEdgeId: 'e1',
            upstreamNode: 'u/load',
            behindUnit: 'u/load',
          }),
        ],
      }),
    ],
  });
}

describe('the cable after a fuse', () => {
  it('[CA2] passes at exactly the fuse', () => {
    expect(saidBy(cableAfterFuse, facts(1.5, 13, 13, '101'))).toEqual([
      {
        outcome: 'passes',
        messageId: 'within',
        subjectId: 'e1',
        origin: 'scheme',
        actual: 13,
        limit: 13,
        unit: 'A',
      },
    ]);
  });

  it('[CA2] fails 1.5 mm² by method 103, 10 A behind 13 A', () => {
    expect(saidBy(cableAfterFuse, facts(1.5, 10, 13, '103'))).toMatchObject([
      { outcome: 'fails', messageId: 'tooLittle', actual: 10, limit: 13 },
    ]);
  });

  it('[CA2] accepts 1.0 mm² behind 3 A, and asks about it behind 13 A', () => {
    expect(saidBy(cableAfterFuse, facts(1, 8, 3, '103'))).toMatchObject([{ outcome: 'passes' }]);
    expect(saidBy(cableAfterFuse, facts(1, 16, 13))).toMatchObject([
      { outcome: 'decide', messageId: 'thin', actual: 1, limit: 1.5 },
    ]);
  });

  it('[CA2] says one thing of a thin cable: too little or not proven goes before thin', () => {
    expect(saidBy(cableAfterFuse, facts(1, 8, 13, '103'))).toMatchObject([
      { outcome: 'fails', messageId: 'tooLittle' },
    ]);
    expect(saidBy(cableAfterFuse, facts(1, null, 13))).toMatchObject([{ outcome: 'not-proven' }]);
  });

  it('[CA2] is not proven with an unknown way, or short of the largest fuse with an unknown one', () => {
    expect(saidBy(cableAfterFuse, facts(2.5, null, 13))).toMatchObject([{ outcome: 'not-proven' }]);
    expect(saidBy(cableAfterFuse, facts(1.5, 10, null))).toMatchObject([{ outcome: 'not-proven' }]);
    expect(saidBy(cableAfterFuse, facts(2.5, 27, null))).toMatchObject([{ outcome: 'passes', limit: 13 }]);
  });
});
