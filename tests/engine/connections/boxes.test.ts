import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { boxDepths, fittedDepthMm } from '#engine/connections/box-depth.ts';
import { buildThings } from '#engine/connections/build-things.ts';
import type { BackBox } from '#engine/connections/things.ts';
import { estimate } from '#engine/estimate.ts';
import type { Point } from '#model/installation.ts';
import type { OwnBoxDepths } from '#model/library.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import {
  fuseOf,
  inputOf,
  legEdge,
  newEdge,
  nodeOf,
  onWall,
  pointOf,
  runOf,
  schemeOf,
  segmentOf,
  spotAt,
  type Wiring,
  wanted,
} from './wiring-builder.ts';

const ring = [legEdge('l1', 'ring', 'a'), legEdge('l2', 'a', 'ring')];

function boxAt(id: string, wiring: Wiring): BackBox {
  const { boxes } = buildThings(inputOf(wiring));
  return boxes.find((box) => box.id === id) ?? expect.fail(`no box at ${id}`);
}

/** A point on a ring from which a wanted one is fed. */
function fed(from: Point, to: Point, rest: Wiring = {}): Wiring {
  return { points: [from, to], foundEdges: ring, newEdges: [newEdge('n', from.id, to.id)], ...rest };
}

const plain = { kind: 'socket-twin', features: [], flexOutlet: false, cables: 1 } as const;

const when = { date: '2026-11-25', revision: 1 };

describe('the depth of a box', () => {
  it.each([
    ['an ordinary outlet with two cables', { ...plain, cables: 2 }, 25, 35],
    ['the same with three', { ...plain, cables: 3 }, 35, 35],
    ['USB', { ...plain, features: ['usb'] }, 35, 47],
    ['an RCD', { ...plain, features: ['rcd'] }, 35, 47],
    ['a metal plate', { ...plain, features: ['metal'] }, 35, 35],
    ['a fused unit', { ...plain, kind: 'fused-unit' as const }, 25, 35],
    ['a fused unit with flex outlet', { ...plain, kind: 'fused-unit' as const, flexOutlet: true }, 35, 47],
    ['a flex outlet alone', { ...plain, kind: 'flex-outlet' as const, flexOutlet: true }, 35, 47],
    ['a cooker control', { ...plain, kind: 'cooker-control' as const }, 47, 47],
  ])('wants of %s %#', (_, contents, minimumMm, preferredMm) => {
    expect(boxDepths(contents)).toEqual({ minimumMm, preferredMm });
  });

  it('goes by the firm’s own sheet where there is one, and room beyond it is never less', () => {
    const twin = { ...plain, cables: 2 };
    expect(boxDepths(twin, { 'socket-twin': 20 })).toEqual({ minimumMm: 20, preferredMm: 35 });
    expect(boxDepths(twin, { 'socket-twin': 40 })).toEqual({ minimumMm: 40, preferredMm: 40 });
    expect(boxDepths(twin, { usb: 60, 'third-cable': 60 })).toEqual({ minimumMm: 25, preferredMm: 35 });
    // An outlet plate goes by its own sheet, not by that of a unit with an outlet.
    const plate = { ...plain, kind: 'flex-outlet' as const, flexOutlet: true };
    expect(boxDepths(plate, { 'flex-outlet': 25 }).minimumMm).toBe(25);
    expect(boxDepths({ ...twin, cables: 3 }, { 'third-cable': 28 })).toEqual({
      minimumMm: 28,
      preferredMm: 35,
    });
  });

  it('is one that the scheme’s boxes follow', () => {
    const library = demoLibrary();
    const job = demoJob('saltglass-row');
    const deepest = (boxDepths: OwnBoxDepths) =>
      Math.max(
        ...(
          estimate(job, { ...library, norms: { ...library.norms, boxDepths } }, when).schemes[0]?.worked
            .things.boxes ?? []
        ).map((box) => box.minimumDepthMm),
      );
    expect(deepest({})).toBeLessThan(60);
    expect(deepest({ 'socket-twin': 60 })).toBe(60);
  });

  it.each([
    [25, 35],
    [35, 35],
    [36, 47],
    [47, 47],
    [60, 60],
  ])('is fitted from stock: where %i mm is wanted, %i', (minimumMm, depthMm) => {
    expect(fittedDepthMm(minimumMm)).toBe(depthMm);
  });
});

describe('what is built into which wall', () => {
  it.each([
    ['brick', undefined, 'steel'],
    ['stud', undefined, 'dry-lining'],
    ['stud', 'flush', 'dry-lining'],
    ['dabbed', 'flush', 'steel'],
    ['dabbed', 'dry-lined', 'dry-lining'],
    ['dabbed', undefined, 'dry-lining'],
    ['lath', 'flush', 'steel'],
    ['brick', 'surface', 'surface'],
    ['stud', 'surface', 'surface'],
  ] as const)('on the %s wall, mounted %s: %s', (wallId, mount, build) => {
    const to = wanted('w', { place: onWall(wallId), ...(mount === undefined ? {} : { mount }) });
    expect(boxAt('w', fed(pointOf('a'), to)).build).toBe(build);
  });

  it('carries the wall over to the box', () => {
    expect(boxAt('w', fed(pointOf('a'), wanted('w', { place: onWall('party') })))).toMatchObject({
      wallCore: 'brick',
      lining: 'none',
      finish: 'plaster',
      party: true,
      state: 'new',
      action: 'fit',
      cause: null,
      gangs: 2,
      depthMm: 35,
      foundDepthMm: null,
    });
  });

  it('fits what the point asks for in place of the derived box', () => {
    const to = wanted('w', { box: { depthMm: 47, gangs: 1 } });
    expect(boxAt('w', fed(pointOf('a'), to))).toMatchObject({ depthMm: 47, gangs: 1, minimumDepthMm: 25 });
  });
});

describe('a found box that a third cable comes into', () => {
  it.each([
    [25, 're-box', 'third-cable', 35],
    [34, 're-box', 'third-cable', 35],
    [35, 'keep', null, 35],
    [47, 'keep', null, 47],
    [undefined, 'unknown', null, 35],
  ] as const)('of %s mm: %s', (boxDepthMm, action, cause, depthMm) => {
    const from = pointOf('a', { asFound: boxDepthMm === undefined ? {} : { boxDepthMm } });
    expect(boxAt('a', fed(from, wanted('w')))).toMatchObject({
      action,
      cause,
      depthMm,
      cables: 3,
      state: 'found',
    });
  });

  it('is not proven when its depth was assumed', () => {
    const from = pointOf('a', { certainty: { boxDepthMm: 'assumed' } });
    expect(boxAt('a', fed(from, wanted('w')))).toMatchObject({
      action: 'unknown',
      foundDepthMm: 35,
      depthMm: 35,
    });
  });

  it('serves at 25 mm where it then holds only two cables', () => {
    const from = pointOf('a', { asFound: { boxDepthMm: 25 } });
    const wiring = fed(from, wanted('w'), { foundEdges: ring.slice(0, 1) });
    expect(boxAt('a', wiring)).toMatchObject({ action: 'keep', cables: 2, depthMm: 25 });
  });

  it('was too shallow already for what it holds', () => {
    const from = pointOf('a', { asFound: { boxDepthMm: 25 }, features: ['usb'] });
    expect(boxAt('a', fed(from, wanted('w')))).toMatchObject({ action: 're-box', cause: 'too-shallow' });
  });

  it('is exchanged where the scheme says so', () => {
    const scheme = schemeOf({ remedies: [{ kind: 're-box', at: 'a' }] });
    expect(boxAt('a', fed(pointOf('a'), wanted('w'), { scheme }))).toMatchObject({
      action: 're-box',
      cause: 'remedy',
    });
  });

  it('is exchanged for the box that the point asks for', () => {
    const from = pointOf('a', { box: { depthMm: 47, gangs: 2 } });
    expect(boxAt('a', fed(from, wanted('w')))).toMatchObject({
      action: 're-box',
      cause: 'wanted',
      depthMm: 47,
    });
  });

  it('is exchanged when its lugs hold no screw', () => {
    const from = pointOf('a', { asFound: { boxDepthMm: 35, lugs: false } });
    expect(boxAt('a', fed(from, wanted('w'))).action).toBe('re-box');
  });

  it('of a point that the scheme does not touch is not listed', () => {
    const wiring = fed(pointOf('a'), wanted('w'));
    const { boxes } = buildThings(inputOf({ ...wiring, points: [pointOf('a'), wanted('w'), pointOf('z')] }));
    expect(boxes.map(({ id }) => id)).toEqual(['a', 'w']);
  });
});

describe('a box that a spacer frame is to make deep enough', () => {
  const framed = (boxDepthMm: number | undefined, rest: Partial<Point> = {}) =>
    boxAt(
      'a',
      fed(
        pointOf('a', {
          shallowBox: 'frame',
          asFound: boxDepthMm === undefined ? {} : { boxDepthMm },
          ...rest,
        }),
        wanted('w'),
      ),
    );

  it.each([
    [34, 10, 44],
    [25, 10, 35],
    [24, 20, 44],
    [16, 20, 36],
    [9, 25, 34],
  ])('of %i mm stays under one of %i mm', (boxDepthMm, frameMm, depthMm) => {
    expect(framed(boxDepthMm)).toMatchObject({ action: 'frame', frameMm, depthMm });
  });

  it('stays as it is where it is deep enough, and may want a frame where nobody measured', () => {
    expect(framed(35).action).toBe('keep');
    expect(framed(35)).not.toHaveProperty('frameMm');
    expect(framed(undefined)).toMatchObject({ action: 'unknown', frameMm: 10 });
  });

  it('is exchanged all the same where more than depth is wrong, or where the scheme or a box asked for says so', () => {
    expect(framed(25, { asFound: { boxDepthMm: 25, lugs: false } }).action).toBe('re-box');
    expect(framed(25, { box: { depthMm: 47, gangs: 2 } })).toMatchObject({ action: 're-box', depthMm: 47 });
    const scheme = schemeOf({ remedies: [{ kind: 're-box', at: 'a' }] });
    const from = pointOf('a', { shallowBox: 'frame', asFound: { boxDepthMm: 25 } });
    expect(boxAt('a', fed(from, wanted('w'), { scheme }))).toMatchObject({
      action: 're-box',
      cause: 'remedy',
    });
  });

  it('may be that of a point that another replaces', () => {
    const old = pointOf('r', { status: 'replaced', shallowBox: 'frame', asFound: { boxDepthMm: 25 } });
    const next = wanted('w', { replaces: 'r', features: ['usb'] });
    expect(boxAt('w', { points: [old, next], nodes: [nodeOf('w')] })).toMatchObject({
      action: 'frame',
      frameMm: 10,
    });
  });
});

describe('a replaced point', () => {
  const nodes = [nodeOf('w')];
  const old = (kind: Point['kind'], boxDepthMm = 35) =>
    pointOf('r', { status: 'replaced', kind, asFound: { boxDepthMm } });

  it('gets a new box when a single becomes a twin', () => {
    const points = [old('socket-single'), wanted('w', { replaces: 'r' })];
    expect(boxAt('w', { points, nodes })).toMatchObject({ action: 're-box', cause: 'replaced', gangs: 2 });
  });

  it('keeps its box when the size stays and the depth serves', () => {
    const points = [old('socket-twin'), wanted('w', { replaces: 'r' })];
    expect(boxAt('w', { points, nodes })).toMatchObject({ action: 'keep', depthMm: 35 });
  });

  it('is changed from single to twin by a remedy, in place', () => {
    const scheme = schemeOf({ remedies: [{ kind: 'single-to-twin', at: 'a' }] });
    const wiring = { points: [pointOf('a', { kind: 'socket-single' })], foundEdges: ring, scheme };
    expect(boxAt('a', wiring)).toMatchObject({ action: 're-box', cause: 'replaced', gangs: 2 });
    expect(buildThings(inputOf(wiring)).accessories).toMatchObject([{ id: 'a', kind: 'socket-twin' }]);
  });

  it('has the RCD that a remedy asks of a unit which a connection brings along', () => {
    const unit = { pointId: null, connectionId: 'c', state: 'new' } as const;
    const { accessories, boxes } = buildThings(
      inputOf({
        points: [pointOf('a'), wanted('w')],
        nodes: [
          nodeOf('a'),
          nodeOf('w', { state: 'new' }),
          nodeOf('c/unit', unit),
          nodeOf('c/unit/load', { ...unit, kind: 'load-terminals' }),
        ],
        newEdges: [newEdge('n', 'a', 'c/unit'), fuseOf('c/unit'), newEdge('m', 'c/unit/load', 'w')],
        scheme: schemeOf({ remedies: [{ kind: 'rcd-unit', at: 'c/unit' }] }),
      }),
    );
    expect(accessories.find(({ id }) => id === 'c/unit')).toMatchObject({
      kind: 'fused-unit',
      pointId: null,
      features: ['rcd', 'switched'],
    });
    expect(boxes.find(({ id }) => id === 'c/unit')).toMatchObject({ action: 'fit', minimumDepthMm: 35 });
  });

  it('gets an RCD outlet by a remedy, whose depth a 25 mm box does not give', () => {
    const scheme = schemeOf({ remedies: [{ kind: 'rcd-outlet', at: 'a' }] });
    const wiring = { points: [pointOf('a', { asFound: { boxDepthMm: 25 } })], foundEdges: ring, scheme };
    expect(boxAt('a', wiring)).toMatchObject({ action: 're-box', cause: 'too-shallow', depthMm: 35 });
    expect(buildThings(inputOf(wiring)).accessories).toMatchObject([
      { kind: 'socket-twin', features: ['rcd'] },
    ]);
  });
});

describe('knock-outs', () => {
  const drop = (containment: 'oval' | 'none') =>
    runOf('n', 'a', 'w', [
      segmentOf(spotAt(0, 0, 300), spotAt(0, 0, 0), { medium: 'wall-chase', containment }),
      segmentOf(spotAt(0, 0, 0), spotAt(0, 0, 450), { medium: 'wall-chase', containment }),
    ]);

  it('are used by old cables only where the new one comes in a tube', () => {
    expect(boxAt('a', fed(pointOf('a'), wanted('w'), { runs: [drop('oval')] })).knockOuts).toBe(2);
  });

  it('are used by every cable where there is no tube', () => {
    expect(boxAt('a', fed(pointOf('a'), wanted('w'), { runs: [drop('none')] })).knockOuts).toBe(3);
    expect(boxAt('w', fed(pointOf('a'), wanted('w'), { runs: [drop('none')] })).knockOuts).toBe(1);
  });
});

describe('accessories', () => {
  it('are listed only where a cable reaches the wanted point', () => {
    const points = [pointOf('a'), wanted('w'), wanted('left-out')];
    const { accessories } = buildThings(
      inputOf({ points, foundEdges: ring, newEdges: [newEdge('n', 'a', 'w')] }),
    );
    expect(accessories.map(({ id }) => id)).toEqual(['w']);
  });

  it('are none in the house as found, nor are there boxes to fit', () => {
    const { accessories, boxes } = buildThings(
      inputOf({ points: [pointOf('a')], foundEdges: ring, scheme: null }),
    );
    expect(accessories).toEqual([]);
    expect(boxes).toEqual([]);
  });

  it('carry the features of a fused unit', () => {
    const unit = wanted('w', { kind: 'fused-unit', unit: { switched: true, neon: true, flexOutlet: true } });
    expect(buildThings(inputOf(fed(pointOf('a'), unit))).accessories).toMatchObject([
      { kind: 'fused-unit', features: ['flex', 'neon', 'switched'] },
    ]);
  });
});
