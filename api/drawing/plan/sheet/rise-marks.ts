import { type SheetFrame, type SheetPoint, sheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import type { References } from '#engine/work/references.ts';
import { boxAbout, boxCorners, textBox } from '../../label-placer.ts';
import { line, type Shape } from '../../scene.ts';
import type { DrawnCable } from '../cable-layer.ts';
import { LETTERS_MM } from './lettering.ts';
import { labelShapes, type SheetLabels } from './sheet-labels.ts';
import { uprightSaid, uprightsOf } from './uprights.ts';

/** Half of a mark, and the room that it takes beside its words, mm. */
const HALF_MM = 0.9;
const MARK_MM = 2.6;
/** Uprights nearer to each other than this on plan are told as at one place, mm of the house. */
const ONE_PLACE_MM = 60;

/** The mark of a cable that goes up or down, by where its point looks. */
export function riseMark([x, y]: SheetPoint, isUp: boolean): Shape {
  const tip = isUp ? -HALF_MM : HALF_MM;
  return line(
    'rise',
    [sheetPoint(x - HALF_MM, y - tip), sheetPoint(x + HALF_MM, y - tip), sheetPoint(x, y + tip)],
    true,
  );
}

interface Rise {
  readonly at: SheetPoint;
  readonly isUp: boolean;
  readonly said: string;
  readonly cables: readonly string[];
}

/** A storey's rises and drops of new cables, those at one place between the same heights as one. */
function risesOf(
  cables: readonly DrawnCable[],
  storeyId: string,
  { frame, references }: { readonly frame: SheetFrame; readonly references: References },
): readonly Rise[] {
  const rises: Rise[] = [];
  for (const { run, isFound } of cables) {
    if (isFound) continue;
    for (const upright of uprightsOf(run)) {
      const told = uprightSaid(upright, storeyId);
      if (told === null) continue;
      const { said, isUp } = told;
      const [at, mark] = [toSheet(frame, upright.at), references.cable(run.id)];
      const same = rises.findIndex(
        (one) =>
          one.said === said && Math.hypot(one.at[0] - at[0], one.at[1] - at[1]) * frame.scale < ONE_PLACE_MM,
      );
      const other = rises[same];
      if (other === undefined) rises.push({ at, said, isUp, cables: [mark] });
      else rises[same] = { ...other, cables: [...other.cables, mark] };
    }
  }
  return rises;
}

/**
 * Where new cables go up or down on a storey, and between which heights, beside the place; their room is then taken. What finds none is told
 * by the labels.
 */
export function riseMarks(
  cables: readonly DrawnCable[],
  storeyId: string,
  {
    frame,
    references,
    labels,
  }: {
    readonly frame: SheetFrame;
    readonly references: References;
    readonly labels: SheetLabels;
  },
): readonly Shape[] {
  return risesOf(cables, storeyId, { frame, references }).flatMap(({ at, isUp, said, cables: marks }) => {
    const text = `${[...new Set(marks)].join(', ')} h ${said}`;
    const room = textBox(at, text, LETTERS_MM.notes);
    const size = {
      wideMm: room.rightMm - room.leftMm + MARK_MM,
      highMm: room.bottomMm - room.topMm,
      saidAs: text,
    };
    const middle = labels.placeBox(size, { at, halfMm: 0.5 });
    if (middle === null) return [];
    const [, words] = labelShapes(middle, text, 'text-new');
    if (words?.kind !== 'text') return [];
    // The mark stands at the end that looks to the place, the words next to it.
    const way = at[0] > middle[0] ? 1 : -1;
    const endMm = middle[0] + (way * size.wideMm) / 2;
    return [
      line('halo', boxCorners(boxAbout(middle, size.wideMm, size.highMm)), true),
      riseMark(sheetPoint(endMm - way * (HALF_MM + 0.3), middle[1]), isUp),
      {
        ...words,
        at: sheetPoint(endMm - way * MARK_MM, words.at[1]),
        anchor: way > 0 ? ('end' as const) : ('start' as const),
      },
    ];
  });
}
