import type { Side } from '#model/building.ts';
import type { CornerDistances, Plan } from './plan.ts';
import type { WallSpot } from './plane.ts';
import { type WallFace, wallFace } from './wall-face.ts';

/** A spot this near a corner is in it, mm. */
const HAIR_MM = 0.01;

/**
 * Distances from a spot on a wall's face to the inside corners at the face's two ends: a wall that branches
 * off on this side (measured to its near face) or a chimney breast that stands on this side. Walls in one
 * line count as one face.
 *
 * @returns left and right as seen by someone in the room who looks at the wall; null where the face ends
 * without an inside corner, and both null on a breast itself or for a wall that the plan does not have.
 */
export function cornerDistances(plan: Plan, spot: WallSpot): CornerDistances {
  const face = wallFace(plan, spot.wallId, spot.side);
  if (face === null) return { leftMm: null, rightMm: null };
  const breasts = breastsOf(plan, face);
  if (breasts.some(([lowMm, highMm]) => lowMm < spot.alongMm && spot.alongMm < highMm))
    return { leftMm: null, rightMm: null };
  const cornersMm = [face.lowCornerMm, face.highCornerMm, ...breasts.flat()].filter((mm) => mm !== null);
  // A spot in the very corner may be a hair beyond it.
  const lowMm = nearest(
    cornersMm.filter((mm) => mm <= spot.alongMm + HAIR_MM).map((mm) => Math.max(0, spot.alongMm - mm)),
  );
  const highMm = nearest(
    cornersMm.filter((mm) => mm > spot.alongMm - HAIR_MM).map((mm) => Math.max(0, mm - spot.alongMm)),
  );
  // On the left face someone looking at the wall has its `to` end on the left hand.
  return spot.side === 'left' ? { leftMm: highMm, rightMm: lowMm } : { leftMm: lowMm, rightMm: highMm };
}

function nearest(distancesMm: readonly number[]): number | null {
  return distancesMm.length === 0 ? null : Math.min(...distancesMm);
}

/** Stretches of the face that a chimney breast covers, low and high end along the face. */
function breastsOf(plan: Plan, face: WallFace): readonly (readonly [number, number])[] {
  return face.pieces.flatMap(({ wallId, side, startMm, sense }) =>
    (plan.wallById.get(wallId)?.wall.openings ?? [])
      .filter((opening) => opening.kind === 'breast' && standsOn(opening.side, side))
      .map(({ alongMm, widthMm }): readonly [number, number] => {
        const a = startMm + sense * alongMm;
        const b = startMm + sense * (alongMm + widthMm);
        return [Math.min(a, b), Math.max(a, b)];
      }),
  );
}

/** A breast whose side nobody recorded is taken to be in the way on both. */
function standsOn(breastSide: Side | undefined, side: Side): boolean {
  return breastSide === undefined || breastSide === side;
}
