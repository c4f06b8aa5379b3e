import type { Storey, Wall } from '#model/building.ts';
import type { Drawing } from './drawing.ts';
import { endsAt } from './move-walls.ts';
import { dot } from './vector.ts';
import { directionOf, isParallel, isSamePlace, otherSide, roomAt, wallLengthMm } from './wall-line.ts';
import { placesOnWalls } from './wall-places.ts';

/** Walls are parted at junctions alone: makes one of two that go on in one line where nothing else meets any more. */
export function joinInLine(drawing: Drawing): void {
  const { storey } = drawing;
  for (let again = true; again; ) {
    again = false;
    for (const wall of storey.walls) {
      const next = goesOn(storey, wall);
      if (next === null) continue;
      takeOver(drawing, wall, next);
      again = true;
      break;
    }
  }
}

/** The wall that goes on from a wall's `to` as the same wall: alike, with the same rooms, and nothing else at the corner. */
function goesOn(storey: Storey, wall: Wall): Wall | null {
  const others = endsAt(storey, wall.to).filter((one) => one.wall !== wall);
  const [only] = others;
  if (only === undefined || others.length > 1 || !isParallel(directionOf(wall), directionOf(only.wall)))
    return null;
  // Only straight on: a wall that comes back over the first is no continuation.
  const away = dot(directionOf(wall), directionOf(only.wall)) * (only.end === 'from' ? 1 : -1);
  return away > 0 && isAlike(storey, wall, only.wall, only.end === 'from') ? only.wall : null;
}

function isAlike(storey: Storey, a: Wall, b: Wall, isAlong: boolean): boolean {
  const facts = ({ thicknessMm, core, external, party, structural, insulated }: Wall): string =>
    JSON.stringify({ thicknessMm, core, external, party, structural, insulated });
  if (facts(a) !== facts(b)) return false;
  return (['left', 'right'] as const).every((side) => {
    const theirs = isAlong ? side : otherSide(side);
    return (
      roomAt(storey, a.id, side)?.id === roomAt(storey, b.id, theirs)?.id &&
      JSON.stringify(a.faces[side]) === JSON.stringify(b.faces[theirs])
    );
  });
}

/** A wall takes over the one that goes on from its `to`, with all that is on it. */
function takeOver({ job, storey }: Drawing, wall: Wall, next: Wall): void {
  const startMm = wallLengthMm(wall);
  const nextMm = wallLengthMm(next);
  const isAlong = isSamePlace(next.from, wall.to);
  const along = (mm: number): number => startMm + (isAlong ? mm : nextMm - mm);
  const { onWall, inWall } = placesOnWalls(job);
  for (const place of onWall)
    if (place.wall === next.id) {
      place.wall = wall.id;
      place.alongMm = along(place.alongMm);
      if (!isAlong) place.side = otherSide(place.side);
    }
  for (const corner of inWall)
    if (corner.wall === next.id) {
      corner.wall = wall.id;
      if (!isAlong && 'side' in corner)
        Object.assign(corner, { side: corner.side === 'left' ? 'right' : 'left' });
    }
  for (const opening of next.openings)
    wall.openings.push({
      ...opening,
      alongMm: isAlong ? along(opening.alongMm) : along(opening.alongMm + opening.widthMm),
      ...(opening.side === undefined || isAlong ? {} : { side: otherSide(opening.side) }),
    });
  wall.to = isAlong ? [...next.to] : [...next.from];
  storey.walls = storey.walls.filter((one) => one !== next);
  for (const room of storey.rooms) room.walls = room.walls.filter((one) => one.wall !== next.id);
}
