import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Point, pointKind } from '#model/installation.ts';
import {
  firstHeightMm,
  foundHeightMm,
  isSameHeightKind,
  usualHeights,
} from '../../../ui/elements/as-found/usual-heights.ts';

const kinds = fc.constantFrom(...pointKind.options);
const heights = fc.integer({ min: 0, max: 2500 });
const found = fc
  .record({
    kind: kinds,
    status: fc.constantFrom('existing' as const, 'wanted' as const, 'removed' as const),
    heightMm: fc.option(heights),
  })
  .map(
    ({ heightMm, ...point }): Pick<Point, 'kind' | 'status' | 'place'> =>
      heightMm === null ? point : { ...point, place: { storey: 'ground', at: [0, 0], heightMm } },
  );

describe('the height at which a point begins', () => {
  it('is the firm’s own where it has one, and that is offered once', () => {
    fc.assert(
      fc.property(kinds, heights, (kind, heightMm) => {
        expect(firstHeightMm(kind, { [kind]: heightMm })).toBe(heightMm);
        const offered = usualHeights(kind, { [kind]: heightMm }).map((one) => one.heightMm);
        expect(new Set(offered).size).toBe(offered.length);
        for (const one of usualHeights(kind)) expect(offered).toContain(one.heightMm);
      }),
    );
  });

  it('is that of the last such point which was found, never of a wanted one; else as of a new one', () => {
    fc.assert(
      fc.property(fc.array(found, { maxLength: 12 }), kinds, heights, (points, kind, ownMm) => {
        const alike = points.filter((one) => one.status !== 'wanted' && isSameHeightKind(one.kind, kind));
        const placed = alike.flatMap(({ place }) => (place === undefined ? [] : [place.heightMm]));
        expect(foundHeightMm(points, kind, { [kind]: ownMm })).toBe(placed.at(-1) ?? ownMm);
      }),
    );
  });

  it('is low for sockets of new dwellings and at the floor for joints', () => {
    expect(firstHeightMm('socket-twin')).toBe(450);
    expect(firstHeightMm('joint')).toBe(0);
  });
});
