import { distanceMm } from '../../plan/plane.ts';
import { together, type WorkCost } from '../way-tariff.ts';
import { CLOSE_MM, type PlumbInto } from './house-face-lines.ts';
import type { WaysMaterial } from './house-net.ts';
import { endOf, nothing, startOf, type WayLine } from './line.ts';
import type { Join } from './net-edge.ts';

/**
 * Holes through floors that have no void: between plumb lines that stand above one another, in corners most of all. A hole
 * through a floor takes what one through a wall does.
 */
export function floorHoles(
  { plan, tariff }: WaysMaterial,
  plumbs: readonly PlumbInto[],
  lines: readonly WayLine[],
): readonly Join[] {
  const byStorey = new Map<string, PlumbInto[]>();
  for (const plumb of plumbs) byStorey.set(plumb.storeyId, [...(byStorey.get(plumb.storeyId) ?? []), plumb]);
  return plan.storeys.flatMap(({ storey, aboveId }) => {
    const lower = (byStorey.get(storey.id) ?? []).filter(({ above }) => above === null);
    const upper = (byStorey.get(aboveId ?? '') ?? []).filter(({ below }) => below === null);
    return lower.flatMap((plumb) =>
      upper
        .filter(({ at }) => distanceMm(at, plumb.at) <= CLOSE_MM)
        .flatMap((over): readonly Join[] => {
          const [from, to] = [lines[plumb.line], lines[over.line]];
          if (from === undefined || to === undefined) return [];
          // Only lines that reach the ceiling and the floor, and not as far as an opening between.
          if (Math.abs(endOf(from) - storey.heightMm) > 1 || Math.abs(startOf(to)) > 1) return [];
          const drilled = [from.atEnd, to.atEnd].reduce<WorkCost>(
            (work, end) => (end === undefined ? work : together(work, end)),
            tariff.wallHole,
          );
          const lengthMm = over.floorMm + startOf(to) - (plumb.floorMm + endOf(from));
          return [
            {
              a: { line: plumb.line, tMm: endOf(from) },
              b: { line: over.line, tMm: startOf(to) },
              measure: { ...nothing, ...drilled, lengthMm },
              wallId: null,
            },
          ];
        }),
    );
  });
}
