import type { Plan } from '#engine/plan/plan.ts';
import { planPointOf } from '#engine/plan/plane.ts';
import { type SheetFrame, type SheetPoint, sheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import { boxRound, type LabelPlacer, placesAround } from '../label-placer.ts';
import { line, type Shape, words } from '../scene.ts';

const shortWords: Readonly<Record<string, string>> = {
  'gas-meter': 'gas meter',
  'gas-pipe': 'gas',
};

/** What the rules measure from, as it lies on the sheet. */
export interface DrawnFixture {
  readonly name: string;
  readonly corners: readonly SheetPoint[];
}

/** A storey's fixtures on the sheet; worktops are left out: much hangs and stands over them. */
export function drawnFixtures(frame: SheetFrame, plan: Plan, storeyId: string): readonly DrawnFixture[] {
  return plan.fixtures
    .filter((entry) => entry.storeyId === storeyId && entry.fixture.kind !== 'worktop')
    .map(({ fixture }) => ({
      name: shortWords[fixture.kind] ?? fixture.kind,
      corners: fixture.outline.map((at) => toSheet(frame, planPointOf(at))),
    }));
}

/** The outlines of a storey's worktops, thin and without names, for a screen: what hangs and stands over them is drawn over them. */
export const worktopOutlines = (frame: SheetFrame, plan: Plan, storeyId: string): readonly Shape[] =>
  plan.fixtures
    .filter((entry) => entry.storeyId === storeyId && entry.fixture.kind === 'worktop')
    .map(({ fixture }) =>
      line(
        'fixture',
        fixture.outline.map((at) => toSheet(frame, planPointOf(at))),
        fixture.outline.length > 2,
      ),
    );

/** The stairwells of a storey: the opening in its floor, crossed out as nothing crosses it. */
export const stairwellShapes = (frame: SheetFrame, plan: Plan, storeyId: string): readonly Shape[] =>
  (plan.storeyById.get(storeyId)?.storey.stairwells ?? []).flatMap((outline) => {
    const corners = outline.map((at) => toSheet(frame, planPointOf(at)));
    const half = Math.floor(corners.length / 2);
    const across = corners.slice(0, half).flatMap((corner, i) => {
      const opposite = corners[i + half];
      return opposite === undefined ? [] : [line('fixture', [corner, opposite])];
    });
    return [line('fixture', corners, true), ...across];
  });

/** The outline of a fixture, thin. */
export const fixtureOutline = ({ corners }: DrawnFixture): Shape =>
  line('fixture', corners, corners.length > 2);

/** Outlines of what the rules measure from (sinks, hobs, baths, gas), thin, with their names in or beside them. */
export function fixtureShapes(
  frame: SheetFrame,
  plan: Plan,
  storeyId: string,
  free: LabelPlacer,
  sizeMm = 1.8,
): readonly Shape[] {
  return drawnFixtures(frame, plan, storeyId).flatMap((fixture) => {
    const { leftMm, rightMm, topMm, bottomMm } = boxRound(fixture.corners);
    const middle = sheetPoint((leftMm + rightMm) / 2, (topMm + bottomMm) / 2);
    const at = free.place(fixture.name, sizeMm, [middle, ...placesAround(middle, [0, 1], 3.5)]);
    const foot = sheetPoint(at[0], at[1] + sizeMm / 3);
    return [fixtureOutline(fixture), words('text-soft', foot, fixture.name, { sizeMm, anchor: 'middle' })];
  });
}
