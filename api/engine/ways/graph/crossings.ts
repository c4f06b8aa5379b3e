import { BOARD_REACH_MM } from '../floor-opening.ts';
import { noWork } from '../way-tariff.ts';
import { isStop, measureOf, nothing, openingAt, SAME_MM, type WayLine } from './line.ts';
import type { LineIndex, NumberedLine } from './line-index.ts';
import type { Join } from './net-edge.ts';

/** Where the lines of one list cross those of an index: turning there opens the floor, where there is one, ends a drop, or takes a fitting. */
export function crossings(lines: readonly NumberedLine[], index: LineIndex): readonly Join[] {
  const joins: Join[] = [];
  for (const own of lines)
    for (const one of index.across(own.line)) {
      const join = own.line.axis === 0 ? turnAt(own, one) : turnAt(one, own);
      if (join !== null) joins.push(join);
    }
  return joins;
}

/** Null where either may not be turned off there. */
function turnAt(level: NumberedLine, plumb: NumberedLine): Join | null {
  const [aMm, bMm] = [plumb.line.fixedMm, level.line.fixedMm];
  if (!isStop(level.line, aMm) || !isStop(plumb.line, bMm)) return null;
  const isReached = isByDrop(level.line, aMm) || isByDrop(plumb.line, bMm);
  const opening = isReached ? noWork : openingAt(level.line, aMm);
  // On a wall no floor is opened, and under a floor nothing of a wall turns.
  const turning = isAtBox(plumb.line, bMm) ? noWork : (plumb.line.atEnd ?? plumb.line.atTurn);
  const work = turning ?? opening;
  return {
    a: { line: level.number, tMm: aMm },
    b: { line: plumb.number, tMm: bMm },
    measure: work === noWork ? nothing : measureOf(work),
  };
}

/** Whether a place on a line is that of its own box. */
export const isAtBox = ({ boxMm }: WayLine, tMm: number): boolean =>
  boxMm !== undefined && Math.abs(boxMm - tMm) <= SAME_MM;

/** Whether a place is within reach of where a line's own cable comes into the void: a turn there needs no board of its own. */
function isByDrop({ dropMm }: { readonly dropMm?: number }, tMm: number): boolean {
  return dropMm !== undefined && Math.abs(tMm - dropMm) <= BOARD_REACH_MM;
}
