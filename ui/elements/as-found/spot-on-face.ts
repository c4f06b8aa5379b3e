import { cornerDistances } from '#engine/plan/corners.ts';
import type { Plan } from '#engine/plan/plan.ts';
import type { WallSpot } from '#engine/plan/plane.ts';
import { wallFace } from '#engine/plan/wall-face.ts';

/** A hand of someone in the room who looks at the wall. */
export type Hand = 'left' | 'right';

/**
 * The spot on a face at a distance from the inside corner on one hand: the spot is moved along the face until the
 * corner that it is measured to now is that far away. A face may go on over several walls in one line; the spot is
 * then on the wall where it comes to lie.
 *
 * @returns null where there is no corner on that hand to measure from.
 */
export function spotFromCorner(plan: Plan, spot: WallSpot, hand: Hand, distanceMm: number): WallSpot | null {
  const corners = cornerDistances(plan, spot);
  const nowMm = hand === 'left' ? corners.leftMm : corners.rightMm;
  if (nowMm === null) return null;
  // On the left face the left hand is towards the wall's `to` end.
  const isTowardsTo = (spot.side === 'left') === (hand === 'left');
  const furtherMm = distanceMm - nowMm;
  return spotAlong(plan, spot, spot.alongMm + (isTowardsTo ? -furtherMm : furtherMm));
}

/** The spot in the middle of a face that a plan has. */
export function middleOfFace(plan: Plan, wallId: string, side: WallSpot['side']): WallSpot {
  const lengthMm = plan.wallById.get(wallId)?.lengthMm ?? 0;
  return { wallId, side, alongMm: Math.round(lengthMm / 2) };
}

/** A spot by its distance along the whole face, on the piece of wall that it falls on; beyond its ends on its own wall. */
function spotAlong(plan: Plan, spot: WallSpot, alongFaceMm: number): WallSpot {
  for (const piece of wallFace(plan, spot.wallId, spot.side)?.pieces ?? []) {
    const alongMm = (alongFaceMm - piece.startMm) * piece.sense;
    const lengthMm = plan.wallById.get(piece.wallId)?.lengthMm ?? 0;
    if (alongMm >= 0 && alongMm <= lengthMm)
      return { wallId: piece.wallId, side: piece.side, alongMm: Math.round(alongMm) };
  }
  return { ...spot, alongMm: Math.max(0, Math.round(alongFaceMm)) };
}
