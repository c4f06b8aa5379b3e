import { describe, expect, it } from 'vitest';
import { wantedConnected } from '#engine/rules/wanted-connected.ts';
import { factsOf, nodeOf, nodePlaceOf, pointOf, saidBy, schemeOf, shapeOf } from './facts-builder.ts';

const facts = (reached: readonly string[], scheme = true, shape: 'ring' | 'unknown' = 'ring') =>
  factsOf({
    job: { points: [pointOf('r1'), pointOf('w1', { status: 'wanted' })] },
    scheme: scheme ? schemeOf() : null,
    proposed: { nodes: [nodeOf('r1'), nodeOf('w1')] },
    shapes: [
      shapeOf('c', {
        shape,
        places: ['r1', 'w1'].map((id) =>
          nodePlaceOf(id, { role: reached.includes(id) ? 'unfused-spur' : 'unreached' }),
        ),
      }),
    ],
  });

describe('every wanted point', () => {
  it('[CN2] passes one that a cable reaches', () => {
    expect(saidBy(wantedConnected, facts(['r1', 'w1']))).toEqual([
      { outcome: 'passes', messageId: 'connected', subjectId: 'w1', origin: 'scheme' },
    ]);
  });

  it('[CN2] fails one that none reaches', () => {
    expect(saidBy(wantedConnected, facts(['r1']))).toMatchObject([
      { outcome: 'fails', messageId: 'notConnected' },
    ]);
  });

  it('[CN2] passes a cable to a point of a circuit whose legs nobody told', () => {
    expect(saidBy(wantedConnected, facts([], true, 'unknown'))).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[CN2] fails one that the scheme does not name at all', () => {
    const bare = facts(['r1', 'w1']);
    const nodes = bare.proposed.nodes.filter(({ id }) => id !== 'w1');
    expect(saidBy(wantedConnected, { ...bare, proposed: { ...bare.proposed, nodes } })).toMatchObject([
      { outcome: 'fails' },
    ]);
  });

  it('[CN2] says nothing of the house as found', () => {
    expect(saidBy(wantedConnected, facts([], false))).toEqual([]);
  });
});
