import { BOARD_REACH_MM } from '../floor-opening.ts';
import { noWork } from '../way-tariff.ts';
import { isStop, measureOf, openingAt } from './line.ts';
import type { LineIndex, NumberedLine } from './line-index.ts';
import type { Join } from './net-edge.ts';
import { crossingOf } from './way-net.ts';

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

function turnAt(level: NumberedLine, plumb: NumberedLine): Join | null {
  const at = crossingOf(level.line, plumb.line);
  if (at === null || !isStop(level.line, at[0]) || !isStop(plumb.line, at[1])) return null;
  const isReached = isByDrop(level.line, at[0]) || isByDrop(plumb.line, at[1]);
  const opening = isReached ? noWork : openingAt(level.line, at[0]);
  return {
    a: { line: level.number, tMm: at[0] },
    b: { line: plumb.number, tMm: at[1] },
    measure: measureOf(opening),
  };
}

/** Whether a place is within reach of where a line's own cable comes into the void: a turn there needs no board of its own. */
function isByDrop({ dropMm }: { readonly dropMm?: number }, tMm: number): boolean {
  return dropMm !== undefined && Math.abs(tMm - dropMm) <= BOARD_REACH_MM;
}
