import type { SVGTemplateResult } from 'lit';
import { describe, expect, it } from 'vitest';
import type { Shape } from '#drawing/scene.ts';
import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import { inksTogether } from '../../../ui/elements/plan/inks-together.ts';

const at = sheetPoint;
const line = (ink: Extract<Shape, { kind: 'line' }>['ink'], y: number): Shape => ({
  kind: 'line',
  ink,
  points: [at(0, y), at(10, y)],
  closed: false,
});
const words: Shape = {
  kind: 'text',
  ink: 'text-new',
  at: at(1, 2),
  text: '3265',
  sizeMm: 3,
  anchor: 'middle',
  angleDeg: 0,
  strong: true,
};

/** The ink and the path of each element that is no lettering. */
const paths = (made: readonly SVGTemplateResult[]): readonly (readonly unknown[])[] =>
  made
    .filter(({ strings }) => strings.join('').startsWith('<path'))
    .map(({ values }) => [values[0], values[1]]);

describe('shapes that are drawn anew at every movement', () => {
  it('are one path an ink, whatever lies between, with groups taken apart', () => {
    const circle: Shape = { kind: 'circle', ink: 'opening', at: at(5, 5), radiusMm: 2 };
    const made = inksTogether([
      line('wall', 0),
      line('opening', 1),
      { kind: 'group', subject: 'p1', title: 'P1', shapes: [line('wall', 2), circle] },
    ]);
    expect(paths(made)).toEqual([
      ['wall', 'M0.00 0.00L10.00 0.00M0.00 2.00L10.00 2.00'],
      ['opening', 'M0.00 1.00L10.00 1.00M3.00 5.00A2 2 0 0 1 7.00 5.00A2 2 0 0 1 3.00 5.00z'],
    ]);
  });

  it('keep a path of their own where an outline would be seen through another, and come first', () => {
    const made = inksTogether([line('wall', 0), line('wall-light', 1), line('wall-light', 2)]);
    expect(paths(made).map(([ink]) => ink)).toEqual(['wall-light', 'wall-light', 'wall']);
  });

  it('have their lettering above all else, each by itself', () => {
    const made = inksTogether([words, line('wall', 0), words]);
    expect(made).toHaveLength(3);
    expect(made.slice(1).every(({ strings }) => strings.join('').startsWith('<text'))).toBe(true);
  });

  it('are none for none', () => expect(inksTogether([])).toEqual([]));
});
