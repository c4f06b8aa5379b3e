import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FRAME_DEPTHS_MM, frameDepthMm } from '#engine/connections/box-depth.ts';
import { frameDemands } from '#engine/takeoff/frame-lines.ts';
import { knownItems } from '#engine/takeoff/items.ts';
import { usualCounts, usualSold } from '#engine/takeoff/kit-counts.ts';
import { screwForFrameMm } from '#engine/takeoff/plate-screws.ts';
import type { Point } from '#model/installation.ts';
import { legEdge, newEdge, pointOf, wanted } from '#tests/engine/connections/wiring-builder.ts';
import { linesByItem, measuredByItem, workedOf } from './worked-builder.ts';

const known = new Set(knownItems.map(({ id }) => id));

/** A ring point whose box is 25 mm deep, and a spur from it: its third cable wants 35 mm. */
const spurred = (rest: Partial<Point>) =>
  workedOf({
    points: [
      pointOf('a', { mount: 'flush', asFound: { boxDepthMm: 25 }, shallowBox: 'frame', ...rest }),
      pointOf('b'),
      wanted('w', { mount: 'surface' }),
    ],
    foundEdges: [legEdge('l1', 'a', 'b'), legEdge('l2', 'b', 'a')],
    newEdges: [
      newEdge('l1', 'a', 'b', { state: 'found', legId: 'l1' }),
      newEdge('l2', 'b', 'a', { state: 'found', legId: 'l2' }),
      newEdge('n', 'a', 'w'),
    ],
  });
const counted = (rest: Partial<Point>) => measuredByItem(frameDemands(spurred(rest), usualCounts));

describe('a spacer frame', () => {
  it('is counted with two longer screws of its plate, and no box', () => {
    expect(counted({})).toEqual({ 'frame-twin-10': 1, 'screw-m3.5-40': 2 });
    expect(counted({ kind: 'socket-single' })).toEqual({ 'frame-single-10': 1, 'screw-m3.5-40': 2 });
    expect(counted({ asFound: { boxDepthMm: 16 } })).toEqual({ 'frame-twin-20': 1, 'screw-m3.5-50': 2 });
    expect(counted({ features: ['metal'] })).toEqual({ 'frame-twin-10': 1, 'screw-m3.5-40-metal': 2 });
    const lines = linesByItem(spurred({}));
    expect([...lines.keys()].filter((item) => item.startsWith('box-steel'))).toEqual([]);
    expect(lines.get('frame-twin-10')).toMatchObject({ quantity: 1, group: 'boxes', causes: ['a'] });
  });

  it('is none where a box is exchanged', () => {
    const { shallowBox: _, ...exchanged } = pointOf('a', { mount: 'flush', asFound: { boxDepthMm: 25 } });
    const worked = workedOf({
      points: [exchanged, wanted('w', { mount: 'surface' })],
      foundEdges: [legEdge('l1', 'a', 'a')],
      newEdges: [newEdge('l1', 'a', 'a', { state: 'found', legId: 'l1' }), newEdge('n', 'a', 'w')],
    });
    expect(frameDemands(worked, usualCounts)).toEqual([]);
    expect(linesByItem(worked).get('box-steel-twin-35')).toMatchObject({ quantity: 1 });
  });

  it('may be needed over a box that nobody has measured, in the place of another box', () => {
    const lines = linesByItem(spurred({ asFound: {} }));
    expect(lines.get('frame-twin-10')).toMatchObject({ quantity: 0, highQuantity: 1, causes: ['a'] });
    expect(lines.get('screw-m3.5-40')).toMatchObject({ quantity: 0, highQuantity: 2 });
    expect([...lines.keys()].filter((item) => item.startsWith('box-steel'))).toEqual([]);
  });

  it('is the shallowest that reaches, and its screws hold as deep in the lugs as those that came with the plate', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 25, max: 60 }), (foundMm, minimumMm) => {
        const frameMm = frameDepthMm(foundMm, minimumMm);
        const reaching = FRAME_DEPTHS_MM.filter((depthMm) => foundMm + depthMm >= minimumMm);
        expect(frameMm).toBe(reaching.length === 0 ? 25 : Math.min(...reaching));
        const screwMm = screwForFrameMm(frameMm, usualCounts);
        expect(screwMm - frameMm).toBeGreaterThanOrEqual(25);
        expect(usualSold.plateScrewsMm.filter((each) => each < screwMm && each - frameMm >= 25)).toEqual([]);
      }),
    );
  });

  it('is an item of the list in every size and with every screw', () => {
    for (const size of ['single', 'twin'])
      for (const depthMm of FRAME_DEPTHS_MM) expect(known.has(`frame-${size}-${depthMm}`)).toBe(true);
    for (const lengthMm of usualSold.plateScrewsMm)
      for (const look of ['', '-metal', '-brushed', '-polished', '-black'])
        expect(known.has(`screw-m3.5-${lengthMm}${look}`)).toBe(true);
  });
});
