import { describe, expect, it } from 'vitest';
import { spurFromSpur } from '#engine/rules/spur-from-spur.ts';
import { factsOf, nodeOf, nodePlaceOf, pointOf, saidBy, shapeOf, spurOf } from './facts-builder.ts';

/** Ring point R1; found spur end S1; W1 new from `from`; J a joint in the spur. */
function facts(
  accessoryNodes: readonly string[],
  from: string,
  role: 'ring' | 'claimed-ring' | 'claimed-spur' = 'ring',
) {
  const on = (nodeId: string, upstreamNode: string, depth: number) =>
    nodePlaceOf(nodeId, { role: 'unfused-spur', upstreamNode, rootNode: 'r1', depth });
  return factsOf({
    job: { points: ['r1', 's1', 's2', 'w1'].map((id) => pointOf(id)) },
    proposed: {
      nodes: [
        nodeOf('r1'),
        nodeOf('s1'),
        nodeOf('s2'),
        nodeOf('w1', { state: 'new' }),
        nodeOf('j', { kind: 'joint' }),
      ],
    },
    shapes: [
      shapeOf('c', {
        shape: role === 'ring' ? 'ring' : 'unknown',
        claimed: 'ring',
        spurs: [
          spurOf('spur@e1', { accessoryNodes, jointNodes: ['j'], isNew: accessoryNodes.includes('w1') }),
        ],
        places: [
          nodePlaceOf('r1', { role }),
          on('j', 'r1', 1),
          on('s1', from === 'j' ? 'j' : 'r1', 2),
          on('s2', 's1', 3),
          on('w1', from, 4),
        ],
      }),
    ],
  });
}

describe('spurs from spurs', () => {
  it('[SP3] passes a spur that starts from the ring', () => {
    expect(saidBy(spurFromSpur, facts(['w1'], 'r1'))).toEqual([
      { outcome: 'passes', messageId: 'none', subjectId: 'w1', origin: 'scheme' },
    ]);
  });

  it('[SP3] fails a spur from the end of a spur', () => {
    expect(saidBy(spurFromSpur, facts(['s1', 'w1'], 's1'))).toEqual([
      { outcome: 'fails', messageId: 'spurFromSpur', subjectId: 'w1', origin: 'scheme' },
    ]);
  });

  it('[SP3] leaves what was a spur from a spur before to the survey, and gives the scheme its own part', () => {
    const known = facts(['s1', 's2', 'w1'], 's2');
    const nodes = known.proposed.nodes.filter(({ id }) => id !== 'w1');
    const found = { ...known.proposed, nodes };
    const shape = shapeOf('c', {
      ...known.shapes.get('c'),
      spurs: [spurOf('spur@e1', { accessoryNodes: ['s1', 's2'] })],
    });
    const said = saidBy(spurFromSpur, {
      ...known,
      found,
      foundShapes: new Map([['c', shape]]),
    });
    expect(said.map(({ subjectId, outcome, origin }) => [subjectId, outcome, origin])).toEqual([
      ['s2', 'fails', 'found'],
      ['w1', 'fails', 'scheme'],
    ]);
  });

  it('[SP3] blames the scheme for a found point that it turns into a spur from a spur', () => {
    const known = facts(['s1', 's2'], 's1');
    const said = saidBy(spurFromSpur, {
      ...known,
      foundShapes: new Map([['c', shapeOf('c', { spurs: [] })]]),
    });
    expect(said).toMatchObject([{ subjectId: 's2', outcome: 'fails', origin: 'scheme' }]);
  });

  it('[SP3] fails a branch at a joint in a spur', () => {
    expect(saidBy(spurFromSpur, facts(['s1', 'w1'], 'j'))).toMatchObject([
      { outcome: 'fails', messageId: 'branches', subjectId: 'w1' },
    ]);
  });

  it('[SP3] fails a spur from a point that was seen on a spur', () => {
    expect(saidBy(spurFromSpur, facts(['r1', 'w1'], 'r1', 'claimed-spur'))).toMatchObject([
      { outcome: 'fails', messageId: 'fromFoundSpur', subjectId: 'w1' },
    ]);
  });

  it('[SP3] is not proven where the legs are not told', () => {
    expect(saidBy(spurFromSpur, facts(['w1'], 'r1', 'claimed-ring'))).toMatchObject([
      { outcome: 'not-proven', messageId: 'ringNotTold', origin: 'scheme' },
    ]);
  });
});
