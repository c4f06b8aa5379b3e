import type { Plan } from '../plan/plan.ts';
import { faceNormal } from '../plan/position-of-place.ts';
import type { Segment } from '../ways/run.ts';
import { directionOf, dot, spotOf, type Vector } from '../ways/spot.ts';

/** How channel turns: on one face, into a corner of the room, or round an edge that stands out. */
export type Turn = 'flat' | 'internal' | 'external';

/** A turn of less than 30° out of the wall's face is one on the face. Common practice, no source. */
const OUT_OF_FACE = 0.5;

/**
 * How two stretches meet, by the faces that they lie on: what leaves the face towards the room turns into a corner, what leaves
 * it the other way goes round an edge. Where no wall is told a level turn is taken to follow the corner of a room.
 */
export function turnOf(plan: Plan, [first, second]: readonly [Segment, Segment | undefined]): Turn {
  const [came, goes] = [wayOf(first), second === undefined ? null : wayOf(second)];
  if (second === undefined || came === null || goes === null) return 'flat';
  const [face, nextFace] = [faceOf(plan, first), faceOf(plan, second)];
  const back: Vector = [-came[0], -came[1], -came[2]];
  const leaves = face === null ? 0 : dot(goes, face);
  const left = Math.abs(leaves) >= OUT_OF_FACE || nextFace === null ? leaves : dot(back, nextFace);
  if (Math.abs(left) >= OUT_OF_FACE) return left > 0 ? 'internal' : 'external';
  const areLevel = first.direction === 'horizontal' && second.direction === 'horizontal';
  return areLevel && face === null && nextFace === null ? 'internal' : 'flat';
}

const wayOf = ({ from, to }: Segment): Vector | null => directionOf(spotOf(from), spotOf(to));

/** Out of the face of the wall that a stretch lies on; null where that is not told. */
function faceOf(plan: Plan, { wallId, side }: Segment): Vector | null {
  const wall = wallId === null ? undefined : plan.wallById.get(wallId);
  if (wall === undefined || side === null) return null;
  const [x, y] = faceNormal(wall, side);
  return [x, y, 0];
}
