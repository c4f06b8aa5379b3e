import { describe, expect, it } from 'vitest';
import { rcdForBuriedCable } from '#engine/rules/rcd-for-buried-cable.ts';
import type { Segment } from '#engine/ways/run.ts';
import type { Wall } from '#model/building.ts';
import type { Cable } from '#model/cable.ts';
import type { Board } from '#model/installation.ts';
import type { Remedy } from '#model/scheme.ts';
import {
  boardOf,
  circuitOf,
  factsOf,
  nodeOf,
  nodePlaceOf,
  pointOf,
  runOf,
  saidBy,
  schemeOf,
  segmentOf,
  shapeOf,
  twin25,
} from './facts-builder.ts';

const face = { finish: 'plaster', lining: 'none' } as const;
const wallOf = (core: Wall['core'], thicknessMm: number): Wall => ({
  id: 'v',
  from: [0, 0],
  to: [3000, 0],
  thicknessMm,
  core,
  external: false,
  faces: { left: face, right: face },
  openings: [],
});

interface Situation {
  readonly segment?: Partial<Segment>;
  readonly wall?: Wall;
  readonly board?: Partial<Board>;
  readonly remedies?: Remedy[];
  readonly cable?: Cable;
}

function said({
  segment = {},
  wall = wallOf('brick', 230),
  board = {},
  remedies = [],
  cable = twin25,
}: Situation) {
  const inWall = segmentOf({ medium: 'wall-chase', wallId: 'v', side: 'left', depthMm: 25, ...segment });
  const plan = { wall, storeyId: 'gf', lengthMm: 3000, direction: [1, 0], leftNormal: [0, 1] } as const;
  return saidBy(
    rcdForBuriedCable,
    factsOf({
      job: {
        boards: [boardOf('b1', board)],
        circuits: [circuitOf('c')],
        points: [pointOf('u', { kind: 'fused-unit' }), pointOf('w1')],
      },
      scheme: schemeOf([], { remedies }),
      plan: { wallById: new Map([['v', plan]]) },
      proposed: { nodes: [nodeOf('u/load', { kind: 'load-terminals', pointId: 'u' }), nodeOf('w1')] },
      runs: [runOf('e1', [segmentOf(), inWall], { cable })],
      shapes: [
        shapeOf('c', {
          places: [
            nodePlaceOf('u/load'),
            nodePlaceOf('w1', { upstreamNode: 'u/load', upstreamEdgeId: 'e1' }),
          ],
        }),
      ],
    }),
  );
}

describe('new cable in walls', () => {
  it('[RC3] passes at exactly 50 mm', () => {
    expect(said({ segment: { depthMm: 50 } })).toEqual([
      {
        outcome: 'passes',
        messageId: 'deepEnough',
        subjectId: 'e1',
        origin: 'scheme',
        actual: 50,
        limit: 50,
        unit: 'mm',
      },
    ]);
  });

  it('[RC3] fails at 49 mm, and where no depth is told', () => {
    const fails = [{ outcome: 'fails', messageId: 'missing', fix: { kind: 'rcbo', at: 'c' } }];
    expect(said({ segment: { depthMm: 49 } })).toMatchObject(fails);
    expect(said({ segment: { depthMm: null } })).toMatchObject(fails);
  });

  it('[RC3] measures from the nearer face', () => {
    expect(said({ segment: { depthMm: 60 }, wall: wallOf('brick', 100) })).toMatchObject([
      { outcome: 'fails' },
    ]);
  });

  it('[RC3] fails in a wall with metal studs at any depth, straight through it too', () => {
    const wall = wallOf('metal-stud', 150);
    const fails = [{ outcome: 'fails', messageId: 'missingInMetal' }];
    expect(said({ segment: { medium: 'stud-cavity', depthMm: 75 }, wall })).toMatchObject(fails);
    expect(said({ segment: { medium: 'through-wall', depthMm: 75 }, wall })).toMatchObject(fails);
  });

  it('[RC3] passes with an RCBO, or behind a unit with RCD', () => {
    expect(said({ remedies: [{ kind: 'rcbo', at: 'c' }] })).toMatchObject([
      { outcome: 'passes', messageId: 'covered' },
    ]);
    expect(said({ remedies: [{ kind: 'rcd-unit', at: 'u' }] })).toMatchObject([{ outcome: 'passes' }]);
  });

  it('[RC3] does not take an RCD outlet for protection of its own cable', () => {
    expect(said({ remedies: [{ kind: 'rcd-outlet', at: 'w1' }] })).toMatchObject([{ outcome: 'fails' }]);
  });

  it('[RC3] tells how far along only where there is anything before it', () => {
    const alongOf = (segments: readonly Segment[]) =>
      rcdForBuriedCable.check(
        factsOf({
          job: { boards: [boardOf('b1')], circuits: [circuitOf('c')] },
          scheme: schemeOf(),
          runs: [runOf('e1', segments)],
        }),
      )[0]?.values?.along;
    const chase = segmentOf({ medium: 'wall-chase', depthMm: 25 });
    expect(alongOf([chase])).toBe('');
    expect(alongOf([segmentOf(), chase])).toBe(' (1 m along)');
  });

  it('[RC3] is not proven where the board’s RCDs are not known', () => {
    expect(said({ board: { certainty: { rcds: 'unknown' } } })).toMatchObject([{ outcome: 'not-proven' }]);
  });

  it('[RC3] is not proven where it is only assumed that there is none, and names the RCBO all the same', () => {
    expect(said({ board: { certainty: { rcds: 'assumed' } } })).toMatchObject([
      { outcome: 'not-proven', messageId: 'assumedNone', fix: { kind: 'rcbo', at: 'c' } },
    ]);
  });

  it('[RC3] says nothing of armoured cable, of the surface, or of a hole straight through brick', () => {
    expect(said({ cable: { type: 'steel-wire-armoured', lineMm2: 2.5, cpcMm2: 2.5 } })).toEqual([]);
    expect(said({ segment: { medium: 'surface-channel' } })).toEqual([]);
    expect(said({ segment: { medium: 'through-wall' } })).toEqual([]);
  });
});
