import { describe, expect, it } from 'vitest';
import { drawnWayShapes } from '#drawing/plan/drawn-way.ts';
import type { Ink } from '#drawing/scene.ts';
import { type Position, planPoint } from '#engine/plan/plane.ts';
import { sheetPoint } from '#engine/plan/sheet-frame.ts';

const frame = { scale: 50, origin: planPoint(0, 0), at: sheetPoint(0, 0) };
const at = (x: number, y: number, levelMm = 300): Position => ({
  storeyId: 'gf',
  at: planPoint(x, y),
  heightMm: levelMm,
  levelMm,
});
const end = at(2000, 1000);
const shapes = (next: Parameters<typeof drawnWayShapes>[1]['next'], corners = [at(0, 0)]) =>
  drawnWayShapes(frame, { corners, end, rest: [planPoint(0, 0), planPoint(2000, 1000)], next });
const inks = (some: ReturnType<typeof shapes>): readonly Ink[] =>
  some.flatMap((shape) => ('ink' in shape ? [shape.ink] : []));

describe('a way that is drawn', () => {
  it('has a dot at each corner, and dashes where it is only found', () => {
    const three = shapes(null, [at(0, 0), at(1000, 0), at(1000, 500)]);
    expect(inks(three).filter((ink) => ink === 'symbol-new-solid')).toHaveLength(3);
    expect(inks(three)).toEqual(expect.arrayContaining(['new', 'new-next']));
    expect(inks(shapes(null))).not.toContain('new');
  });

  it('shows by an arrow head where it goes up or down', () => {
    const tips = (levels: readonly number[]): readonly number[] =>
      shapes(
        null,
        levels.map((level) => at(0, 0, level)),
      ).flatMap((shape) =>
        shape.kind === 'line' && shape.closed
          ? [(shape.points[0]?.[1] ?? 0) - (shape.points[1]?.[1] ?? 0)]
          : [],
      );
    const [down = 0] = tips([300, -110]);
    const [up = 0] = tips([-110, 300]);
    expect(down).toBeGreaterThan(0);
    expect(up).toBeLessThan(0);
    expect(tips([300])).toEqual([]);
  });

  it('crosses out a place to which it cannot go', () => {
    const next = { at: planPoint(500, 0), places: [planPoint(500, 0)] };
    expect(inks(shapes({ ...next, possible: false }))).toContain('mark-fails');
    expect(inks(shapes({ ...next, possible: true }))).not.toContain('mark-fails');
  });
});
