import type { Plan } from '#engine/plan/plan.ts';
import { planPointOf } from '#engine/plan/plane.ts';
import { type SheetFrame, sheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import { type LabelPlacer, textBox } from '../label-placer.ts';
import { line, type Shape, words } from '../scene.ts';

const shortWords: Readonly<Record<string, string>> = {
  'gas-meter': 'gas meter',
  'gas-pipe': 'gas',
};

/** Outlines of what the rules measure from (sinks, hobs, baths, gas), thin, with their names. */
export function fixtureShapes(
  frame: SheetFrame,
  plan: Plan,
  storeyId: string,
  free: LabelPlacer,
): readonly Shape[] {
  return plan.fixtures
    .filter((entry) => entry.storeyId === storeyId && entry.fixture.kind !== 'worktop')
    .flatMap(({ fixture }) => {
      const corners = fixture.outline.map((at) => toSheet(frame, planPointOf(at)));
      const xs = corners.map((at) => at[0]);
      const ys = corners.map((at) => at[1]);
      const middle = sheetPoint(
        (Math.min(...xs) + Math.max(...xs)) / 2,
        (Math.min(...ys) + Math.max(...ys)) / 2 + 0.6,
      );
      const name = shortWords[fixture.kind] ?? fixture.kind;
      free.take(textBox(middle, name, 1.8));
      return [
        line('fixture', corners, corners.length > 2),
        words('text-soft', middle, name, {
          sizeMm: 1.8,
          anchor: 'middle',
        }),
      ];
    });
}
