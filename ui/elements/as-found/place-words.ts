import type { Plan } from '#engine/plan/plan.ts';
import type { Place } from '#model/installation.ts';
import { roomOfPlace } from './room-of-place.ts';
import { faceValue, type WallChoice } from './wall-choices.ts';

/** Where something is, in a line, its room first: "Living room, wall to the hall, 450 mm up". */
export function placeWords(plan: Plan, faces: readonly WallChoice[], place: Place | undefined): string {
  if (place === undefined) return 'Not placed yet';
  const height = `${place.heightMm} mm up`;
  const room = roomOfPlace(plan, place);
  if (!('wall' in place))
    return `${room ?? plan.storeyById.get(place.storey)?.storey.name ?? 'a storey'}, ${height}`;
  const face = faces.find(({ value }) => value === faceValue(place.wall, place.side));
  return [face?.label ?? room, height].filter((words) => words != null).join(', ');
}
