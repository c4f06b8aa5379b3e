import { describe, expect, it } from 'vitest';
import { spurFeeds } from '#engine/rules/spur-feeds.ts';
import {
  circuitOf,
  edgeOf,
  factsOf,
  nodeOf,
  nodePlaceOf,
  pointOf,
  saidBy,
  shapeOf,
  spurOf,
  unitOf,
} from './facts-builder.ts';

/** A ring point R1 with a chain of accessories on its spur; the last is new. */
function chain(
  kinds: readonly ('socket-single' | 'socket-twin' | 'fused-unit' | 'dp-switch' | 'flex-outlet')[],
) {
  const ids = kinds.map((_, index) => `w${index + 1}`);
  const edges = ids.map((id, index) => edgeOf(`e${index + 1}`, ids[index - 1] ?? 'r1', id, { state: 'new' }));
  return factsOf({
    job: {
      circuits: [circuitOf('c')],
      points: [pointOf('r1'), ...kinds.map((kind, i) => pointOf(`w${i + 1}`, { kind }))],
    },
    proposed: { nodes: [nodeOf('r1'), ...ids.map((id) => nodeOf(id, { state: 'new' }))], edges },
    things: { fusedUnits: kinds.flatMap((kind, i) => (kind === 'fused-unit' ? [unitOf(`w${i + 1}`)] : [])) },
    shapes: [
      shapeOf('c', {
        ringNodes: ['r1'],
        spurs: [spurOf('spur@e1', { edgeIds: edges.map(({ id }) => id), accessoryNodes: ids, isNew: true })],
        places: [
          nodePlaceOf('r1'),
          ...ids.map((id, index) =>
            nodePlaceOf(id, {
              role: 'unfused-spur',
              upstreamNode: ids[index - 1] ?? 'r1',
              upstreamEdgeId: `e${index + 1}`,
              rootNode: 'r1',
              depth: index + 1,
            }),
          ),
        ],
      }),
    ],
  });
}

/** One fixed item alone on the spur from R1. */
function fixed(kind: 'flex-outlet' | 'dp-switch' | 'cooker-control', watts: number | null) {
  const facts = chain([kind === 'cooker-control' ? 'dp-switch' : kind]);
  const load = watts === null ? {} : { load: { watts, use: 'a heater', fixed: true } };
  const pointById = new Map([
    ['r1', pointOf('r1')],
    ['w1', pointOf('w1', { kind, ...load })],
  ]);
  return { ...facts, plan: { ...facts.plan, pointById } };
}

describe('what an unfused spur feeds', () => {
  it('[SP1] passes one twin outlet, exactly 26 A', () => {
    expect(saidBy(spurFeeds, chain(['socket-twin']))).toEqual([
      {
        outcome: 'passes',
        messageId: 'one',
        subjectId: 'w1',
        origin: 'scheme',
        actual: 26,
        limit: 26,
        unit: 'A',
      },
    ]);
  });

  it('[SP1] fails a second twin outlet: 52 A possible, 26 A and no more allowed', () => {
    const [finding] = saidBy(spurFeeds, chain(['socket-twin', 'socket-twin']));
    expect(finding).toEqual({
      outcome: 'fails',
      messageId: 'several-twins',
      subjectId: 'w2',
      origin: 'scheme',
      actual: 52,
      limit: 26,
      unit: 'A',
    });
    expect(spurFeeds.messages['several-twins']).toContain('two 13 A plugs');
    expect(spurFeeds.remedies['several-twins']).toContain('before the first outlet');
  });

  it('[SP1] fails two single outlets as well, though they draw no more than one twin', () => {
    const [finding] = saidBy(spurFeeds, chain(['socket-single', 'socket-single']));
    expect(finding).toMatchObject({
      outcome: 'fails',
      messageId: 'several-few',
      actual: 2,
      limit: 1,
      unit: 'accessories',
    });
  });

  it('[SP1] fails a fused unit after the first outlet', () => {
    const [finding] = saidBy(spurFeeds, chain(['socket-twin', 'fused-unit']));
    expect(finding).toMatchObject({ outcome: 'fails', messageId: 'several', subjectId: 'w2', actual: 39 });
  });

  it('[SP1] passes a fused unit alone, whatever is behind its fuse', () => {
    const [finding] = saidBy(spurFeeds, chain(['fused-unit']));
    expect(finding).toMatchObject({ outcome: 'passes', actual: 13 });
  });

  it('[SP1] takes a switch and the outlet of what it switches as one item', () => {
    const found = saidBy(spurFeeds, chain(['dp-switch', 'flex-outlet']));
    expect(found.map(({ outcome, subjectId }) => [outcome, subjectId])).toEqual([['advice', 'w2']]);
  });

  it('[SP1] advises a fuse of its own for one fixed item up to 13 A, and asks above', () => {
    expect(saidBy(spurFeeds, fixed('flex-outlet', 2990))).toEqual([
      {
        outcome: 'advice',
        messageId: 'fixedItem',
        subjectId: 'w1',
        origin: 'scheme',
        actual: 13,
        limit: 13,
        unit: 'A',
      },
    ]);
    expect(saidBy(spurFeeds, fixed('dp-switch', 3000))).toMatchObject([
      { outcome: 'decide', messageId: 'fixedOver', actual: 13.04, limit: 13 },
    ]);
    // 7 kW is 30.43 A: no figure of a twin outlet is set beside it.
    expect(saidBy(spurFeeds, fixed('cooker-control', 7000))).toMatchObject([
      { outcome: 'decide', messageId: 'fixedOver', actual: 30.43, limit: 13 },
    ]);
  });

  it('[SP1] advises a fixed item whose load is not named, without a figure for it', () => {
    expect(saidBy(spurFeeds, fixed('flex-outlet', null))).toEqual([
      { outcome: 'advice', messageId: 'fixedItem', subjectId: 'w1', origin: 'scheme', limit: 13, unit: 'A' },
    ]);
  });

  it('[SP1] names the new accessory where a spur had two already', () => {
    const facts = chain(['socket-twin', 'socket-twin', 'socket-twin']);
    const nodes = facts.proposed.nodes.map((node) =>
      node.id === 'w3' ? node : { ...node, state: 'found' as const },
    );
    const [finding] = saidBy(spurFeeds, { ...facts, proposed: { ...facts.proposed, nodes } });
    expect(finding).toMatchObject({ outcome: 'fails', subjectId: 'w3', origin: 'scheme', actual: 78 });
  });

  it('[SP1] calls two outlets that were there already found, not the scheme’s', () => {
    const facts = chain(['socket-single', 'socket-twin']);
    const nodes = facts.proposed.nodes.map((node) => ({ ...node, state: 'found' as const }));
    const [finding] = saidBy(spurFeeds, { ...facts, proposed: { ...facts.proposed, nodes } });
    expect(finding).toMatchObject({ outcome: 'fails', origin: 'found', actual: 39 });
  });

  it('[SP1] fails a spur from a point that the survey saw on a spur', () => {
    const facts = chain(['socket-twin']);
    const shape = facts.shapes.get('c');
    const places = [
      nodePlaceOf('r1', { role: 'claimed-spur' }),
      ...(shape?.places.filter(({ nodeId }) => nodeId !== 'r1') ?? []),
    ];
    const spurs = [spurOf('spur@e1', { edgeIds: ['e1'], accessoryNodes: ['r1', 'w1'], isNew: true })];
    const claimed = shapeOf('c', { ...shape, shape: 'unknown', claimed: 'ring', places, spurs });
    expect(saidBy(spurFeeds, { ...facts, shapes: new Map([['c', claimed]]) })).toEqual([
      {
        outcome: 'fails',
        messageId: 'foundSpur',
        subjectId: 'w1',
        origin: 'scheme',
        actual: 52,
        limit: 26,
        unit: 'A',
      },
    ]);
  });

  it('[SP1] cannot judge a circuit that nobody called a ring or a radial', () => {
    const facts = chain(['socket-twin', 'socket-twin']);
    const shapes = new Map([
      ['c', shapeOf('c', { ...facts.shapes.get('c'), shape: 'unknown', evidence: 'none', spurs: [] })],
    ]);
    expect(saidBy(spurFeeds, { ...facts, shapes })).toMatchObject([
      { outcome: 'not-proven', messageId: 'shapeUntold', subjectId: 'c' },
    ]);
  });

  it('[SP1] says nothing of a radial, which branches freely', () => {
    const facts = chain(['socket-twin', 'socket-twin']);
    const shapes = new Map([['c', shapeOf('c', { ...facts.shapes.get('c'), shape: 'radial' })]]);
    expect(saidBy(spurFeeds, { ...facts, shapes })).toEqual([]);
  });
});
