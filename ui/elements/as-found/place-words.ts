import type { Plan } from '#engine/plan/plan.ts';
import type { Place } from '#model/installation.ts';
import { faceValue, type WallChoice } from './wall-choices.ts';

/** Where something is, in a line: "Living room, wall to the hall, 450 mm up". */
export function placeWords(plan: Plan, faces: readonly WallChoice[], place: Place | undefined): string {
  if (place === undefined) return 'Not placed yet';
  const height = `${place.heightMm} mm up`;
  if (!('wall' in place)) return `${plan.storeyById.get(place.storey)?.storey.name ?? 'a storey'}, ${height}`;
  const face = faces.find(({ value }) => value === faceValue(place.wall, place.side));
  return face === undefined ? height : `${face.label}, ${height}`;
}
