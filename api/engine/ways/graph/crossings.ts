import { BOARD_REACH_MM } from '../floor-opening.ts';
import { noWork } from '../way-tariff.ts';
import { isStop, measureOf, nothing, openingAt } from './line.ts';
import type { LineIndex, NumberedLine } from './line-index.ts';
import type { Join } from './net-edge.ts';

/** Where the lines of one list cross those of an index: turning there opens the floor, where there is one. */
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
  return {
    a: { line: level.number, tMm: aMm },
    b: { line: plumb.number, tMm: bMm },
    measure: opening === noWork ? nothing : measureOf(opening),
  };
}

/** Whether a place is within reach of where a line's own cable comes into the void: a turn there needs no board of its own. */
function isByDrop({ dropMm }: { readonly dropMm?: number }, tMm: number): boolean {
  return dropMm !== undefined && Math.abs(tMm - dropMm) <= BOARD_REACH_MM;
}
