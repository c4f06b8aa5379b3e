import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BackBox, CableJoint } from '#engine/connections/things.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { boxDemands } from '#engine/takeoff/box-lines.ts';
import { earthDemands } from '#engine/takeoff/earth-lines.ts';
import { fixingDemands } from '#engine/takeoff/fixing-lines.ts';
import { jointDemands, leversFor } from '#engine/takeoff/joint-lines.ts';
import { usualCounts, usualSold } from '#engine/takeoff/kit-counts.ts';
import { makingGoodDemands } from '#engine/takeoff/making-good-lines.ts';
import {
  newEdge,
  onWall,
  pointOf,
  runOf,
  segmentOf,
  spotAt,
  twinAndEarth,
  wanted,
} from '#tests/engine/connections/wiring-builder.ts';
import { linesByItem, measuredByItem, workedOf } from './worked-builder.ts';

const steel: BackBox = {
  id: 'w',
  pointId: 'w',
  gangs: 2,
  build: 'steel',
  wallCore: 'brick',
  lining: 'none',
  finish: 'plaster',
  minimumDepthMm: 35,
  preferredDepthMm: 35,
  foundDepthMm: null,
  depthMm: 35,
  cables: 1,
  action: 'fit',
  cause: null,
  party: false,
  knockOuts: 1,
  state: 'new',
};

function withBoxes(...boxes: readonly Partial<BackBox>[]): Worked {
  const worked = workedOf({});
  return { ...worked, things: { ...worked.things, boxes: boxes.map((box) => ({ ...steel, ...box })) } };
}

describe('boxes', () => {
  it.each([
    [{}, 'box-steel-twin-35'],
    [{ gangs: 1 }, 'box-steel-single-35'],
    [{ gangs: 3 }, 'box-steel-3-gang-35'],
    [{ depthMm: 40 }, 'box-steel-twin-47'],
    [{ depthMm: 60 }, 'box-steel-twin-60'],
    [{ build: 'surface' }, 'box-surface-twin-35'],
    [{ action: 're-box' }, 'box-steel-twin-35'],
  ] as const)('%o: %s', (box, item) => {
    expect(measuredByItem(boxDemands(withBoxes(box)))[item]).toBe(1);
  });

  it('are not asked for where the found one stays', () => {
    expect(boxDemands(withBoxes({ action: 'keep' }))).toEqual([]);
  });

  it('may be needed where a found one was not measured and 25 mm would not do', () => {
    const lines = linesByItem(withBoxes({ action: 'unknown', knockOuts: 2, party: true }));
    expect(lines.get('box-steel-twin-35')).toMatchObject({ quantity: 0, lowQuantity: 0, highQuantity: 1 });
    expect(lines.get('grommet-20')).toMatchObject({ quantity: 0, highQuantity: 2 });
    expect(lines.get('putty-pad-twin')).toMatchObject({ quantity: 0, highQuantity: 1 });
    expect(boxDemands(withBoxes({ action: 'unknown', minimumDepthMm: 25 }))).toEqual([]);
  });

  it('take a putty pad in a party wall, not on its surface', () => {
    const pads = (box: Partial<BackBox>) => measuredByItem(boxDemands(withBoxes({ party: true, ...box })));
    expect(pads({})['putty-pad-twin']).toBe(1);
    expect(pads({ gangs: 1 })['putty-pad-single']).toBe(1);
    expect(pads({ build: 'surface' })['putty-pad-twin']).toBeUndefined();
  });

  it('take grommets in steel only', () => {
    expect(measuredByItem(boxDemands(withBoxes({ knockOuts: 3 })))['grommet-20']).toBe(3);
    expect(measuredByItem(boxDemands(withBoxes({ build: 'dry-lining' })))['grommet-20']).toBeUndefined();
  });
});

describe('fixings of boxes', () => {
  it.each([
    [{}, { 'screw-and-plug': 2, 'screw-m3.5-50': 2 }],
    [{ lining: 'dot-and-dab' }, { 'screw-and-plug': 2, 'screw-m3.5-50': 2 }],
    [{ wallCore: 'timber-stud' }, { 'screw-wood-4x25': 2, 'noggin-300': 1, 'screw-m3.5-50': 2 }],
    [{ build: 'dry-lining' }, {}],
    [{ build: 'surface' }, { 'screw-and-plug': 4 }],
    [{ build: 'surface', gangs: 1, wallCore: 'metal-stud' }, { 'plasterboard-fixing': 2 }],
  ] as const)('%o', (box, expected) => {
    expect(measuredByItem(fixingDemands(withBoxes(box), usualCounts))).toEqual(expected);
  });
});

describe('earthing', () => {
  it('gives every steel box a tail of 0.15 m', () => {
    expect(
      measuredByItem(earthDemands(withBoxes({}, { id: 'v' }), usualCounts))['earth-single-2.5'],
    ).toBeCloseTo(0.3, 9);
    expect(measuredByItem(earthDemands(withBoxes({ build: 'dry-lining' }), usualCounts))).toEqual({});
  });

  it.each([
    [1, 'sleeving-earth-3'],
    [1.5, 'sleeving-earth-3'],
    [2.5, 'sleeving-earth-4'],
    [4, 'sleeving-earth-4'],
    [6, 'sleeving-earth-6'],
  ])('sleeves a protective conductor of %f mm² with %s, 0.12 m an end', (cpcMm2, item) => {
    const run = { ...runOf('n', 'a', 'w'), cable: { ...twinAndEarth, cpcMm2 } };
    expect(measuredByItem(earthDemands(workedOf({ runs: [run] }), usualCounts))).toEqual({ [item]: 0.24 });
  });

  it('does not sleeve flex', () => {
    const run = { ...runOf('n', 'a', 'w'), cable: { type: 'flex', lineMm2: 1.5, cpcMm2: 1.5 } as const };
    expect(earthDemands(workedOf({ runs: [run] }), usualCounts)).toEqual([]);
  });
});

const joint: CableJoint = {
  id: 'j',
  circuitId: 'ring',
  connectionId: 'c',
  pointId: null,
  legId: null,
  kind: 'maintenance-free',
  source: 'derived',
  ratingA: 32,
  accessible: false,
  upstream: { kind: 'device', ratingA: 32 },
  inRing: true,
  cables: 2,
  newCables: 1,
  areaMm2: 5,
  takes: null,
  conductorAreaMm2: 2.5,
  position: null,
  lies: 'floor-void',
  state: 'new',
};

describe('joints', () => {
  const parts = (rest: Partial<CableJoint>) => {
    const worked = workedOf({});
    const things = { ...worked.things, joints: [{ ...joint, ...rest }] };
    return measuredByItem(jointDemands({ ...worked, things }, usualCounts));
  };

  it.each([
    [{}, { 'joint-mf-32-3': 1, 'screw-wood-4x25': 2 }],
    [{ ratingA: 20 }, { 'joint-mf-20-4': 1, 'screw-wood-4x25': 2 }],
    [
      { kind: 'screw', ratingA: 20 },
      { 'joint-screw-20': 1, 'screw-wood-4x25': 2 },
    ],
    [
      { kind: 'screw', ratingA: 30 },
      { 'joint-screw-30': 1, 'screw-wood-4x25': 2 },
    ],
    [
      { kind: 'screw', ratingA: 31 },
      { 'joint-screw-60': 1, 'screw-wood-4x25': 2 },
    ],
    [{ kind: 'lever' }, { 'lever-2': 3, 'joint-enclosure': 1, 'screw-wood-4x25': 2 }],
    [{ kind: 'lever', cables: 3, lies: 'box' }, { 'lever-3': 3 }],
    [{ kind: 'lever', cables: 4, lies: 'box' }, { 'lever-5': 3 }],
    [{ kind: 'lever', conductorAreaMm2: 6, lies: 'box' }, { 'lever-6-2': 3 }],
    [{ kind: 'lever', conductorAreaMm2: 4, cables: 3, lies: 'box' }, { 'lever-3': 3 }],
    [
      { kind: 'lever', cables: 6 },
      { 'lever-5': 6, 'joint-enclosure-large': 1, 'screw-wood-4x25': 2 },
    ],
    [{ state: 'found' }, {}],
  ] as const)('%o', (rest, expected) => {
    expect(parts(rest)).toEqual(expected);
  });

  it('have a way for every cable, however many there are, and no connector too many', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), (cables) => {
        const { ways, count } = leversFor(cables, usualSold);
        // A link between two connectors takes a way of each.
        const places = (connectors: number) => connectors * ways - 2 * (connectors - 1);
        expect(places(count)).toBeGreaterThanOrEqual(cables);
        expect(count === 1 || places(count - 1) < cables).toBe(true);
      }),
    );
  });

  it('crimp three conductors a straight joint, each under its sleeve', () => {
    expect(parts({ kind: 'crimp', lies: 'box' })).toMatchObject({ 'crimp-2.5': 3 });
    expect(parts({ kind: 'crimp', lies: 'box' })['heat-shrink']).toBeCloseTo(0.3, 9);
    expect(parts({ kind: 'crimp', lies: 'box', cables: 3, conductorAreaMm2: 6 })).toMatchObject({
      'crimp-6': 6,
    });
  });
});

describe('a weatherproof outlet', () => {
  it('is its own box: it takes a gland for each cable, and no box, grommet or pad', () => {
    const points = [pointOf('a'), wanted('w', { features: ['ip66'], place: onWall('party') }), wanted('v')];
    const worked = workedOf({
      points,
      newEdges: [newEdge('n', 'a', 'w'), newEdge('m', 'w', 'v')],
      runs: ['n', 'm'].map((id) => runOf(id, 'a', 'w', [segmentOf(spotAt(0, 0, 300), spotAt(900, 0, 300))])),
    });
    const asked = boxDemands(worked).filter(({ causes }) => causes.includes('w'));
    expect(measuredByItem(asked)).toEqual({ 'entry-gland-20': 2 });
    expect(linesByItem(worked).get('socket-twin-ip66')?.quantity).toBe(1);
  });

  it.each([
    ['surface', undefined],
    ['steel', 'flush'],
  ] as const)(
    'stands as %s where the point says %s, and brings the screws of its cover along',
    (build, mount) => {
      const point = wanted('w', { features: ['ip66'], place: onWall('party'), ...(mount && { mount }) });
      const worked = workedOf({ points: [pointOf('a'), point], newEdges: [newEdge('n', 'a', 'w')] });
      expect(worked.things.boxes.find(({ id }) => id === 'w')).toMatchObject({ build, action: 'fit' });
      const screws = fixingDemands(worked, usualCounts).filter(({ causes }) => causes.includes('w'));
      expect(measuredByItem(screws)).toEqual({ 'screw-and-plug': build === 'surface' ? 4 : 2 });
      const plaster = makingGoodDemands(worked, usualCounts).filter(({ causes }) => causes.includes('w'));
      expect(plaster.length > 0).toBe(build === 'steel');
    },
  );
});
