import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { boxRound, type LabelPlacer, type Rectangle, textBox } from '../../label-placer.ts';
import type { Shape } from '../../scene.ts';
import type { DrawnFixture } from '../fixtures.ts';
import { LETTERS_MM } from './lettering.ts';
import { boxesRound, labelShapes, type SheetLabels } from './sheet-labels.ts';

/** Between an outline and a name beside it, mm. */
const GAP_MM = 0.5;

/** Takes the room of the outlines: thin lines, which lettering sooner keeps off. */
export function takeOutlines(fixtures: readonly DrawnFixture[], free: LabelPlacer): void {
  for (const { corners } of fixtures)
    corners.forEach((at, i) => {
      const before = corners[i - 1] ?? corners.at(-1) ?? at;
      const { leftMm, rightMm, topMm, bottomMm } = boxRound([before, at]);
      const box = {
        leftMm: leftMm - 0.2,
        rightMm: rightMm + 0.2,
        topMm: topMm - 0.2,
        bottomMm: bottomMm + 0.2,
      };
      free.take(box, 'line');
    });
}

/** Where a name may stand: within its outline if it is as wide, else along one of its sides, else farther off. */
function placesOf(outline: Rectangle, name: string): readonly Rectangle[] {
  const { leftMm, rightMm, topMm, bottomMm } = outline;
  const middle = sheetPoint((leftMm + rightMm) / 2, (topMm + bottomMm) / 2);
  const boxAt = (at: SheetPoint): Rectangle => textBox(at, name, LETTERS_MM.notes);
  const within = boxAt(middle);
  const [half, halfUp] = [within.rightMm - middle[0], within.bottomMm - middle[1]];
  const fits =
    within.leftMm > leftMm && within.rightMm < rightMm && within.topMm > topMm && within.bottomMm < bottomMm;
  const beside = [
    sheetPoint(middle[0], bottomMm + halfUp + GAP_MM),
    sheetPoint(middle[0], topMm - halfUp - GAP_MM),
    sheetPoint(rightMm + half + GAP_MM, middle[1]),
    sheetPoint(leftMm - half - GAP_MM, middle[1]),
  ].map(boxAt);
  const halfMm = Math.min(rightMm - leftMm, bottomMm - topMm) / 2;
  return [...(fits ? [within] : []), ...beside, ...boxesRound({ at: middle, halfMm }, 2 * half, 2 * halfUp)];
}

/** The names of what is fixed in the rooms, each in its outline or beside it; what finds no room is told by the labels. */
export const fixtureNames = (fixtures: readonly DrawnFixture[], labels: SheetLabels): readonly Shape[] =>
  fixtures.flatMap(({ name, corners }) => {
    const outline = boxRound(corners);
    const { leftMm, rightMm, topMm, bottomMm } = outline;
    const at = labels.placeAmong(
      placesOf(outline, name),
      {
        at: sheetPoint((leftMm + rightMm) / 2, (topMm + bottomMm) / 2),
        halfMm: Math.min(rightMm - leftMm, bottomMm - topMm) / 2,
        saidAs: name,
      },
      'cables',
    );
    return at === null ? [] : labelShapes(at, name, 'text-soft');
  });
