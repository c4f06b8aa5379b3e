import { describe, expect, it } from 'vitest';
import type { Shape } from '#drawing/scene.ts';
import { type CostMark, costScene } from '#drawing/ways/cost-scene.ts';

const mark = (number: number, grossPence: number, messPoints: number, efficient: boolean): CostMark => ({
  id: `found/${number}`,
  number,
  title: `Way ${number}`,
  grossPence,
  messPoints,
  efficient,
});

const marks = [
  mark(1, 90_000, 120, true),
  mark(2, 92_000, 125, false),
  mark(3, 95_000, 60, true),
  mark(4, 99_000, 61, false),
];
const request = { widthMm: 72, vatWords: 'with VAT' };
const layer = (name: string, of: readonly CostMark[] = marks): readonly Shape[] =>
  costScene(of, request).layers.find((one) => one.name === name)?.shapes ?? [];
const placed = (of: readonly CostMark[] = marks): readonly (readonly [number, number])[] =>
  layer('points', of).map((shape) => {
    const symbol = shape.kind === 'group' ? shape.shapes.at(-1) : undefined;
    if (symbol?.kind === 'circle') return symbol.at;
    const [top = [0, 0], right = [0, 0]] = symbol?.kind === 'line' ? symbol.points : [];
    return [top[0], right[1]];
  });

describe('the chart of price against disturbance', () => {
  it('has the cheaper further left, the less disturbing lower, and all within its sheet', () => {
    const at = placed();
    expect(at.map(([x]) => x)).toEqual(at.map(([x]) => x).toSorted((a, b) => a - b));
    const lowest = at.indexOf(at.toSorted((a, b) => b[1] - a[1])[0] ?? [0, 0]);
    expect(lowest).toBe(2);
    const { widthMm, heightMm } = costScene(marks, request);
    for (const [x, y] of at) expect(x > 0 && x < widthMm && y > 0 && y < heightMm).toBe(true);
  });

  it('tells efficient ones by shape, by number and by a line, not by colour alone', () => {
    const kinds = layer('points').map((shape) =>
      shape.kind === 'group' ? shape.shapes.map(({ kind }) => kind).join(' ') : '',
    );
    expect(kinds).toEqual(['text line', 'circle', 'text line', 'circle']);
    expect(layer('efficient')).toHaveLength(1);
  });

  it('names both axes with their units', () => {
    const texts = layer('axes').flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    expect(texts).toEqual(expect.arrayContaining(['Disturbance, points', 'Price with VAT, £']));
    expect(texts.some((text) => /^£[\d,]+$/.test(text))).toBe(true);
  });

  it('holds with one scheme, with none, and where all are alike', () => {
    const alike = [mark(1, 90_000, 0, true), mark(2, 90_000, 0, true)];
    for (const some of [[], marks.slice(0, 1), alike])
      for (const [x, y] of placed(some)) expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
  });
});
