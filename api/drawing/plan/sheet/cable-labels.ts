import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { type LabelPlacer, type Rectangle, textBox } from '../../label-placer.ts';
import { type Shape, words } from '../../scene.ts';
import type { LabelCable } from '../cable-layer.ts';
import { spotsAlong } from '../cable-shapes.ts';
import { LETTERS_MM } from './lettering.ts';
import { labelShapes, type SheetLabels } from './sheet-labels.ts';

/** Between a cable and lettering beside it, mm. */
const BESIDE_MM = 0.8;
/** Radius of the ground of a question mark, mm. */
const ASKED_MM = 1.5;

const about = ([x, y]: SheetPoint, halfMm: number, halfUpMm: number): Rectangle => ({
  leftMm: x - halfMm,
  rightMm: x + halfMm,
  topMm: y - halfUpMm,
  bottomMm: y + halfUpMm,
});

/** Level boxes on a path and close beside it, on its longest stretch first. */
function boxesAlong(path: readonly SheetPoint[], wideMm: number, highMm: number): readonly Rectangle[] {
  const [half, halfUp] = [wideMm / 2, highMm / 2];
  return spotsAlong(path, wideMm + 2, 0).flatMap(({ at: [x, y], isTurned }) => {
    const aside = (isTurned ? half : halfUp) + BESIDE_MM;
    return [0, aside, -aside].map((off) =>
      about(isTurned ? sheetPoint(x + off, y) : sheetPoint(x, y + off), half, halfUp),
    );
  });
}

const middleOf = ({ leftMm, rightMm, topMm, bottomMm }: Rectangle): SheetPoint =>
  sheetPoint((leftMm + rightMm) / 2, (topMm + bottomMm) / 2);

/** A question mark on the cable, where there is room; its dashes say the same. */
function askedShapes(path: readonly SheetPoint[], free: LabelPlacer): readonly Shape[] {
  const boxes = spotsAlong(path, 2 * ASKED_MM, 0).map(({ at }) => about(at, ASKED_MM, ASKED_MM));
  const found = boxes[free.findRoom(boxes, 'walls-too') ?? -1];
  if (found === undefined) return [];
  const at = middleOf(found);
  return [
    { kind: 'circle', at, radiusMm: ASKED_MM, ink: 'halo' },
    words('text-soft', sheetPoint(at[0], at[1] + LETTERS_MM.notes * 0.35), '?', {
      sizeMm: LETTERS_MM.notes,
      anchor: 'middle',
    }),
  ];
}

/**
 * Labels of a sheet's cables: on the cable or close beside it, else farther off with a line that leads to it. They are drawn after all lines,
 * which they interrupt, and so are given to `drawn`.
 */
export const cableLabels =
  (labels: SheetLabels, free: LabelPlacer, drawn: (shapes: readonly Shape[]) => void): LabelCable =>
  (text, path) => {
    if (text === '?') drawn(askedShapes(path, free));
    else {
      const { leftMm, rightMm, topMm, bottomMm } = textBox(sheetPoint(0, 0), text, LETTERS_MM.notes);
      const boxes = boxesAlong(path, rightMm - leftMm, bottomMm - topMm);
      const beside = boxes[free.findRoom(boxes, 'own-cable') ?? -1];
      const [spot] = spotsAlong(path, 0, 0);
      const from = spot?.at ?? path[0];
      const at =
        beside !== undefined
          ? middleOf(beside)
          : from === undefined
            ? null
            : labels.place(text, { at: from, halfMm: 0.4 });
      if (at !== null) drawn(labelShapes(at, text, 'text-new', true));
    }
    return [];
  };
