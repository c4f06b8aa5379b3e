import { describe, expect, it } from 'vitest';
import { planPoint } from '#engine/plan/plane.ts';
import { oldCableReach } from '#engine/rules/old-cable-reach.ts';
import type { Segment } from '#engine/ways/run.ts';
import type { Connection } from '#model/scheme.ts';
import { edgeOf, factsOf, nodeOf, pointOf, runOf, saidBy, schemeOf, segmentOf } from './facts-builder.ts';

const at = (x: number, y: number, levelMm = 0) => ({
  storeyId: 'gf',
  at: planPoint(x, y),
  heightMm: levelMm,
  levelMm,
});

const stretch = (fromX: number, toX: number, partial: Partial<Segment> = {}): Segment =>
  segmentOf({ medium: 'void-open', from: at(fromX, 0), to: at(toX, 0), lengthMm: toX - fromX, ...partial });

const extension: Connection = {
  id: 'k1',
  kind: 'ring-extension',
  circuit: 'c',
  between: [{ point: 'r1' }, { point: 'r2' }],
  leg: 'l1',
  out: { how: 'old-cable', alongMm: 3400 },
  back: { how: 'old-cable', alongMm: 3400 },
  through: ['w1'],
};

interface Cut {
  readonly cutMm: number;
  readonly backMm?: number;
  readonly lengthMm?: number;
  /** Where W1 is; null where nobody said. */
  readonly w1?: readonly [x: number, y: number, level?: number] | null;
  readonly segments?: readonly Segment[];
  readonly connection?: Connection;
}

/**
 * A leg from R1 at x 0 to R2 at x 6000, 6.8 m of cable with its tails of 200 mm: cut at `cutMm` from R1, and
 * at `backMm` for the side of R2, both cut ends brought into W1.
 */
function factsOfCut({ cutMm, backMm = cutMm, lengthMm = 6800, w1 = [3000, 0], ...rest }: Cut) {
  const { segments = [stretch(0, 6000)], connection = extension } = rest;
  const kept = (id: string, from: string, to: string, [fromMm, toMm]: [number, number]) =>
    edgeOf(id, from, to, { legId: 'l1', partMm: { fromMm, toMm }, lengthMm: toMm - fromMm });
  const positions = new Map([
    ['r1', at(0, 0)],
    ['r2', at(6000, 0)],
    ...(w1 === null ? [] : [['w1', at(...w1)] as const]),
  ]);
  return factsOf({
    job: { points: ['r1', 'r2', 'w1'].map((id) => pointOf(id)) },
    plan: { positionOfPoint: positions },
    proposed: {
      nodes: ['r1', 'r2', 'w1'].map((id) => nodeOf(id)),
      edges: [kept('l1/part-1', 'r1', 'w1', [0, cutMm]), kept('l1/part-2', 'w1', 'r2', [backMm, lengthMm])],
    },
    foundRuns: [runOf('l1', segments, { legId: 'l1', endsMm: 400, lengthMm })],
    scheme: schemeOf([connection]),
  });
}

const said = (cut: Cut) => saidBy(oldCableReach, factsOfCut(cut));

describe('old cable whose cut end is brought into a new accessory', () => {
  it('[CN3] passes where both ends just reach it with their tails', () => {
    expect(said({ cutMm: 3400 })).toEqual(
      ['l1/part-1', 'l1/part-2'].map((subjectId) => ({
        outcome: 'passes',
        messageId: 'reaches',
        subjectId,
        origin: 'scheme',
        actual: 3200,
        limit: 3200,
        unit: 'mm',
      })),
    );
  });

  it('[CN3] fails a cable too short to get there even straight, on the side where it is', () => {
    expect(said({ cutMm: 3399 }).map(({ outcome, messageId }) => [outcome, messageId])).toEqual([
      ['fails', 'tooShort'],
      ['passes', 'reaches'],
    ]);
    expect(said({ cutMm: 500, backMm: 600 })).toMatchObject([
      { outcome: 'fails', messageId: 'tooShort', actual: 500, limit: 3400, origin: 'scheme' },
      { outcome: 'passes' },
    ]);
  });

  it('[CN3] counts height: 300 mm up the wall is 300 mm more', () => {
    expect(said({ cutMm: 3699, lengthMm: 7398, w1: [3000, 0, 300] })).toMatchObject([
      { outcome: 'fails', messageId: 'outOfReach', limit: 3500, actual: 3499 },
      { outcome: 'fails', messageId: 'outOfReach' },
    ]);
    expect(said({ cutMm: 3700, lengthMm: 7400, w1: [3000, 0, 300] })).toMatchObject([
      { outcome: 'passes' },
      { outcome: 'passes' },
    ]);
  });

  it('[CN3] measures along the building, at right angles, not through the air', () => {
    expect(said({ cutMm: 3000, lengthMm: 12_000, w1: [2000, 1500] })[0]).toMatchObject({
      outcome: 'fails',
      messageId: 'outOfReach',
      actual: 2800,
      limit: 3700,
    });
  });

  it('[CN3] is not proven where no way is drawn and the cable is little longer than square to the walls', () => {
    // Held at R1's tail. Square: 2000 + 1500, and 200 of tail: 3700; where no way is drawn it may be 30 % more.
    const cutAt = (cutMm: number) => said({ cutMm, lengthMm: 6400, w1: [2000, 1500] })[0];
    expect(cutAt(3899)).toMatchObject({
      outcome: 'fails',
      messageId: 'outOfReach',
      actual: 3699,
      limit: 3700,
    });
    expect(cutAt(3900)).toMatchObject({
      outcome: 'not-proven',
      messageId: 'wayUnknown',
      actual: 3700,
      limit: 3700,
    });
    expect(cutAt(4949)).toMatchObject({ outcome: 'not-proven', messageId: 'wayUnknown' });
    expect(cutAt(4950)).toMatchObject({ outcome: 'passes', messageId: 'reaches', actual: 4750, limit: 3700 });
  });

  it('[CN3] follows the leg round a corner to a place plumb over it, though straight across is nearer', () => {
    const segments = [
      stretch(0, 3000),
      segmentOf({ from: at(3000, 0), to: at(3000, 2000), lengthMm: 2000 }),
      segmentOf({ from: at(3000, 2000), to: at(1000, 2000), lengthMm: 2000 }),
    ];
    const back = (cutMm: number) => said({ cutMm, lengthMm: 7400, w1: [1500, 2000, 300], segments })[0];
    // 3000 + 2000 + 1500 along, 300 up, 200 of tail: 7000. Square across: 1500 + 2000 + 300 + 200.
    expect(back(7200)).toMatchObject({ outcome: 'passes', actual: 7000, limit: 7000 });
    expect(back(7199)).toMatchObject({
      outcome: 'fails',
      messageId: 'outOfReach',
      actual: 6999,
      limit: 7000,
    });
  });

  it('[CN3] frees cable only back to where it is held in a wall', () => {
    const segments = [stretch(0, 1000, { medium: 'wall-chase' }), stretch(1000, 6000)];
    // 6.4 m of cable lie over 6 m of way: the chase ends at 200 + 1000 × 6400 / 6000 = 1267 mm of cable.
    const [first, second] = said({ cutMm: 3400, segments });
    expect(first).toMatchObject({ outcome: 'fails', messageId: 'outOfReach', actual: 2133.3, limit: 2200 });
    expect(second).toMatchObject({ outcome: 'passes' });
    expect(said({ cutMm: 3467, segments })[0]).toMatchObject({ outcome: 'passes' });
  });

  it('[CN3] frees nothing of a cable that is cut inside a chase', () => {
    const segments = [stretch(0, 6000, { medium: 'wall-chase' })];
    expect(said({ cutMm: 3400, segments })[0]).toMatchObject({
      outcome: 'fails',
      messageId: 'outOfReach',
      actual: 0,
      limit: 200,
    });
  });

  it('[CN3] is not proven where the way of the leg is assumed, but fails what no way would make reach', () => {
    const segments = [stretch(0, 6000, { certainty: 'assumed' })];
    expect(said({ cutMm: 3400, segments })).toMatchObject([
      { outcome: 'not-proven', messageId: 'routeAssumed' },
      { outcome: 'not-proven' },
    ]);
    expect(said({ cutMm: 500, segments })[0]).toMatchObject({ outcome: 'fails', messageId: 'tooShort' });
  });

  it('[CN3] is not proven without a place or a length', () => {
    expect(said({ cutMm: 3400, w1: null })).toMatchObject([
      { outcome: 'not-proven', messageId: 'unknown' },
      { outcome: 'not-proven', messageId: 'unknown' },
    ]);
    const facts = factsOfCut({ cutMm: 3400 });
    const edges = facts.proposed.edges.map((edge) => ({
      ...edge,
      legId: null,
      partMm: null,
      lengthMm: null,
    }));
    expect(saidBy(oldCableReach, { ...facts, proposed: { ...facts.proposed, edges } })).toMatchObject([
      { messageId: 'unknown' },
      { messageId: 'unknown' },
    ]);
  });

  it('[CN3] looks at a spur closed by the old cable, and at a unit set into a leg that has a place', () => {
    const closing: Connection = {
      id: 'k1',
      kind: 'close-spur',
      point: 'w1',
      leg: 'l1',
      back: { how: 'old-cable', alongMm: 500 },
    };
    expect(said({ cutMm: 500, connection: closing })[0]).toMatchObject({ outcome: 'fails' });
    const setIn: Connection = { id: 'k1', kind: 'fuse-down', leg: 'l1', alongMm: 500, unit: 'w1', feeds: [] };
    expect(said({ cutMm: 500, connection: setIn })[0]).toMatchObject({ outcome: 'fails' });
  });

  it('[CN3] looks at a unit that the connection brings along only where it has a place', () => {
    const setIn: Connection = { id: 'k1', kind: 'fuse-down', leg: 'l1', alongMm: 3400, unit: {}, feeds: [] };
    const withUnit = (place: { storey: string; at: [number, number]; heightMm: number } | null) => {
      const facts = factsOfCut({ cutMm: 3400, connection: setIn });
      const unit = { place, connectionId: 'k1', pointId: null, inLeg: { legId: 'l1', alongMm: 3400 } };
      const nodes = facts.proposed.nodes.map((node) => (node.id === 'w1' ? { ...node, ...unit } : node));
      return saidBy(oldCableReach, { ...facts, proposed: { ...facts.proposed, nodes } });
    };
    expect(withUnit({ storey: 'gf', at: [3000, 0], heightMm: 300 })).toMatchObject([
      { outcome: 'not-proven', messageId: 'unknown' },
      { outcome: 'not-proven', messageId: 'unknown' },
    ]);
    expect(withUnit(null)).toEqual([]);
  });

  it('[CN3] is silent where the ring is carried on from joints or terminals', () => {
    const jointed: Connection = {
      ...extension,
      out: { how: 'joint', alongMm: 500 },
      back: { how: 'terminals' },
    };
    expect(said({ cutMm: 500, connection: jointed })).toEqual([]);
  });
});
