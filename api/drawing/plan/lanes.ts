import type { SheetPoint } from '#engine/plan/sheet-frame.ts';
import { shifted } from './cable-shapes.ts';

/** Sideways places for cables that share a way, nearest first, mm on paper. */
const lanesMm = [0, 0.9, -0.9, 1.8, -1.8, 2.7, -2.7];

function shareMm(a: readonly SheetPoint[], b: readonly SheetPoint[]): number {
  let shared = 0;
  for (let i = 1; i < a.length; i++) {
    for (let j = 1; j < b.length; j++) {
      const [a1, a2, b1, b2] = [a[i - 1], a[i], b[j - 1], b[j]];
      if (a1 !== undefined && a2 !== undefined && b1 !== undefined && b2 !== undefined)
        shared += overlap(a1, a2, b1, b2);
    }
  }
  return shared;
}

/** Length for which two stretches lie closer than half a millimetre side by side. */
function overlap(a1: SheetPoint, a2: SheetPoint, b1: SheetPoint, b2: SheetPoint): number {
  const length = Math.hypot(a2[0] - a1[0], a2[1] - a1[1]);
  if (length < 1e-6) return 0;
  const ux = (a2[0] - a1[0]) / length;
  const uy = (a2[1] - a1[1]) / length;
  const aside = (p: SheetPoint): number => (p[0] - a1[0]) * uy - (p[1] - a1[1]) * ux;
  if (Math.abs(aside(b1)) > 0.6 || Math.abs(aside(b2)) > 0.6) return 0;
  const along = (p: SheetPoint): number => (p[0] - a1[0]) * ux + (p[1] - a1[1]) * uy;
  const from = Math.max(0, Math.min(along(b1), along(b2)));
  const to = Math.min(length, Math.max(along(b1), along(b2)));
  return Math.max(0, to - from);
}

/** Gives every path a lane in which it covers least of the paths before it; returns the paths so moved. */
export function inLanes(paths: readonly (readonly SheetPoint[])[]): readonly (readonly SheetPoint[])[] {
  const placed: (readonly SheetPoint[])[] = [];
  for (const path of paths) {
    let best = path;
    let least = Number.POSITIVE_INFINITY;
    for (const lane of lanesMm) {
      const moved = shifted(path, lane);
      const covered = placed.reduce((sum, other) => sum + shareMm(moved, other), 0);
      if (covered < least - 0.01) {
        least = covered;
        best = moved;
      }
      if (least === 0) break;
    }
    placed.push(best);
  }
  return placed;
}
