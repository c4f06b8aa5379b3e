import { describe, expect, it } from 'vitest';
import { buildThings } from '#engine/connections/build-things.ts';
import type { CableJoint } from '#engine/connections/things.ts';
import type { Cable } from '#model/cable.ts';
import {
  fuseOf,
  inputOf,
  legEdge,
  newEdge,
  nodeOf,
  placeOf,
  pointOf,
  runOf,
  schemeOf,
  segmentOf,
  spotAt,
  twinAndEarth,
  type Wiring,
  wanted,
} from './wiring-builder.ts';

const A = pointOf('a');
const B = pointOf('b');
const W = wanted('w');
const joint = nodeOf('c/joint', {
  kind: 'joint',
  pointId: null,
  connectionId: 'c',
  inLeg: { legId: 'leg', alongMm: 2000 },
  state: 'new',
});

function tapped(rest: Wiring = {}, cable: Cable = twinAndEarth): Wiring {
  return {
    points: [A, B, W],
    nodes: [nodeOf('a'), nodeOf('b'), nodeOf('w', { state: 'new' }), joint],
    foundEdges: [
      legEdge('leg/1', 'a', 'c/joint', { legId: 'leg' }),
      legEdge('leg/2', 'c/joint', 'b', { legId: 'leg' }),
    ],
    newEdges: [newEdge('c/1', 'c/joint', 'w', { cable })],
    places: [placeOf('c/joint')],
    runs: [runOf('c/1', 'c/joint', 'w', [segmentOf(spotAt(2000, 1000, -110), spotAt(1000, 1000, -110))])],
    ...rest,
  };
}

function onlyJoint(wiring: Wiring): CableJoint {
  const { joints } = buildThings(inputOf(wiring));
  expect(joints).toHaveLength(1);
  return joints[0] ?? expect.fail('no joint');
}

describe('joints', () => {
  it('derives a maintenance-free 32 A joint, out of reach, for a tap under a floor', () => {
    expect(onlyJoint(tapped())).toMatchObject({
      id: 'c/joint',
      kind: 'maintenance-free',
      source: 'derived',
      ratingA: 32,
      accessible: false,
      lies: 'floor-void',
      cables: 3,
      conductorAreaMm2: 2.5,
      inRing: true,
      legId: 'leg',
      state: 'new',
    });
  });

  it('takes the device at the origin as what is upstream of a joint in the ring', () => {
    expect(onlyJoint(tapped()).upstream).toEqual({ kind: 'device', ratingA: 32 });
  });

  it('takes the device that the scheme fits in the place of the one found', () => {
    const device = { standard: 'BS-EN-61009', curve: 'B', ratingA: 20 } as const;
    const scheme = schemeOf({ remedies: [{ kind: 'rcbo', at: 'ring', device }] });
    expect(onlyJoint(tapped({ scheme })).upstream).toEqual({ kind: 'device', ratingA: 20 });
  });

  it('takes the fuse as what is upstream of a joint behind a fused unit, also where the fuse is derived', () => {
    const unit = wanted('u', { kind: 'fused-unit', load: { watts: 150, use: 'boiler', fixed: true } });
    const wiring = tapped({
      points: [A, B, W, unit],
      nodes: [nodeOf('a'), nodeOf('b'), nodeOf('w', { state: 'new' }), joint, nodeOf('u', { state: 'new' })],
      newEdges: [fuseOf('u'), newEdge('c/1', 'c/joint', 'w')],
      places: [placeOf('c/joint', { role: 'behind-fuse', behindUnit: 'u/load' })],
    });
    expect(onlyJoint(wiring).upstream).toEqual({ kind: 'fuse', ratingA: 3 });
    expect(onlyJoint(wiring).inRing).toBe(false);
  });

  it('says that the upstream is unknown when the circuit has no device recorded', () => {
    const wiring = tapped({
      job: { circuits: [{ id: 'ring', name: 'Ring', board: 'board', use: 'sockets' }] },
    });
    expect(onlyJoint(wiring).upstream).toEqual({ kind: 'unknown', ratingA: null });
  });

  it('keeps what the job gives', () => {
    const given = { kind: 'lever', ratingA: 20, accessible: true } as const;
    const nodes = [nodeOf('a'), nodeOf('b'), nodeOf('w'), { ...joint, joint: given }];
    expect(onlyJoint(tapped({ nodes }))).toMatchObject({ ...given, source: 'given' });
  });

  it('tells what is in them: new cables apart, and the area of all where every size is known', () => {
    expect(onlyJoint(tapped())).toMatchObject({ cables: 3, newCables: 1, areaMm2: 7.5 });
    const unknown = [
      legEdge('leg/1', 'a', 'c/joint', { legId: 'leg', cable: null }),
      legEdge('leg/2', 'c/joint', 'b', { legId: 'leg' }),
    ];
    expect(onlyJoint(tapped({ foundEdges: unknown }))).toMatchObject({
      areaMm2: null,
      conductorAreaMm2: 2.5,
    });
  });

  it('tells what they take: by the sheet where the job has its figures, else as is usual; of one unseen nothing', () => {
    const given = { kind: 'maintenance-free', ratingA: 32, accessible: false } as const;
    const takesOf = (takes?: { cables?: number; mm2?: number }) =>
      onlyJoint(
        tapped({
          nodes: [
            nodeOf('a'),
            nodeOf('b'),
            nodeOf('w'),
            { ...joint, joint: { ...given, ...(takes && { takes }) } },
          ],
        }),
      ).takes;
    expect(takesOf()).toEqual({ cables: 4, conductorMm2: 4, areaMm2: null, isFromSheet: false });
    expect(takesOf({ cables: 2 })).toEqual({ cables: 2, conductorMm2: 4, areaMm2: null, isFromSheet: true });
    expect(takesOf({ mm2: 6 })).toEqual({ cables: 4, conductorMm2: 6, areaMm2: null, isFromSheet: true });
    const found = nodeOf('c/joint', { kind: 'joint', pointId: null, state: 'found' });
    const nodes = [nodeOf('a'), nodeOf('b'), nodeOf('w', { state: 'new' }), found];
    expect(onlyJoint(tapped({ nodes }))).toMatchObject({ source: 'unknown', takes: null });
  });

  it.each([
    [4, 'maintenance-free', 32],
    [6, 'crimp', 41],
    [10, 'screw', 60],
  ])('derives what fits conductors of %s mm²: %s, %s A', (lineMm2, kind, ratingA) => {
    const thick = tapped({}, { type: 'flat-twin', lineMm2, cpcMm2: 1.5 });
    expect(onlyJoint(thick)).toMatchObject({ kind, ratingA, conductorAreaMm2: lineMm2 });
  });

  it('knows nothing of a joint that was found and not looked at', () => {
    const found = nodeOf('j', { kind: 'joint' });
    const wiring = { points: [pointOf('j', { kind: 'joint' })], nodes: [found] };
    expect(onlyJoint(wiring)).toMatchObject({
      source: 'unknown',
      ratingA: 0,
      accessible: null,
      state: 'found',
    });
  });

  it('reads a found joint from its point', () => {
    const data = { kind: 'screw', ratingA: 30, accessible: true } as const;
    const wiring = {
      points: [pointOf('j', { kind: 'joint', joint: data })],
      nodes: [nodeOf('j', { kind: 'joint' })],
    };
    expect(onlyJoint(wiring)).toMatchObject({ ...data, source: 'given', pointId: 'j' });
  });

  it('leaves the joint of a removed point in its box, in reach behind a blank plate', () => {
    const wiring = tapped({
      nodes: [
        nodeOf('a'),
        nodeOf('b'),
        nodeOf('w'),
        { ...joint, id: 'c/joint' },
        nodeOf('r/joined', { kind: 'joint', pointId: null, state: 'new' }),
      ],
      points: [A, B, W, pointOf('r', { status: 'removed' })],
    });
    const things = buildThings(inputOf(wiring));
    expect(things.joints.find(({ id }) => id === 'r/joined')).toMatchObject({
      kind: 'lever',
      lies: 'box',
      accessible: true,
    });
    expect(things.accessories).toContainEqual({
      id: 'r/joined',
      pointId: 'r',
      kind: 'blank',
      features: ['twin'],
    });
  });

  it.each([
    ['wall-chase', 'wall', false],
    ['stud-cavity', 'wall', false],
    ['surface-clipped', 'surface', true],
    ['loft', 'loft', true],
    ['void-open', 'floor-void', false],
  ] as const)('tells from a cable in %s that the joint lies in the %s', (medium, lies, accessible) => {
    const runs = [
      runOf('c/1', 'c/joint', 'w', [segmentOf(spotAt(0, 0, 300), spotAt(900, 0, 300), { medium })]),
    ];
    expect(onlyJoint(tapped({ runs }))).toMatchObject({ lies, accessible });
  });

  it('prefers the stretch of the old cable that the joint is cut into', () => {
    const legRun = runOf('leg', 'a', 'b', [
      segmentOf(spotAt(0, 0, 300), spotAt(5000, 0, 300), { medium: 'stud-cavity' }),
    ]);
    const input = { ...inputOf(tapped()), foundRuns: new Map([['leg', legRun]]) };
    const placed = { ...input, nodePositions: new Map([['c/joint', spotAt(2000, 0, 300)]]) };
    expect(buildThings(placed).joints[0]).toMatchObject({ lies: 'wall', position: spotAt(2000, 0, 300) });
  });

  it('says unknown, not false, of reach where no place is known', () => {
    expect(onlyJoint(tapped({ runs: [] }))).toMatchObject({ lies: 'unknown', accessible: null });
  });
});
