import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Rectangle } from './label-placer.ts';
import { baseline } from './proof/hanging-tree.ts';
import { LABEL_SIZE } from './proof/leg-label.ts';
import { line, type Shape, words } from './scene.ts';

/** A round step that divides a span into no more than so many parts. */
export function roundStep(span: number, parts: number): number {
  const least = span / parts;
  const ten = 10 ** Math.floor(Math.log10(least));
  return ([1, 2, 5, 10].find((step) => step * ten >= least) ?? 10) * ten;
}

/** The multiples of a step from one value to another, both included. */
export function multiplesWithin(from: number, to: number, step: number): readonly number[] {
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
}

/** A value of an axis: where it is along it, mm on the sheet, and how it is written. */
export interface AxisMark {
  readonly atMm: number;
  readonly text: string;
}

/** A chart's ground: a rule across at each level, its value on the left; a tick below at each step, its value beneath; the foot line. */
export function axisGround(
  plot: Rectangle,
  levels: readonly AxisMark[],
  ticks: readonly AxisMark[],
): readonly Shape[] {
  return [
    ...levels.flatMap(({ atMm: y, text }) => [
      line('rule', [sheetPoint(plot.leftMm, y), sheetPoint(plot.rightMm, y)]),
      axisWords(sheetPoint(plot.leftMm - 1.2, baseline(y)), text, 'end'),
    ]),
    ...ticks.flatMap(({ atMm: x, text }) => [
      line('opening', [sheetPoint(x, plot.bottomMm), sheetPoint(x, plot.bottomMm + 1)]),
      axisWords(sheetPoint(x, plot.bottomMm + 4), text, 'middle'),
    ]),
    line('opening', [sheetPoint(plot.leftMm, plot.bottomMm), sheetPoint(plot.rightMm, plot.bottomMm)]),
  ];
}

/** What stands at an axis. */
export const axisWords = (
  at: SheetPoint,
  text: string,
  anchor: 'start' | 'middle' | 'end' = 'start',
): Shape => words('text-soft', at, text, { sizeMm: LABEL_SIZE, anchor });
