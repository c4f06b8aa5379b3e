import type { Side, Storey, Wall } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { keepingFixtures } from './fixtures-kept.ts';
import type { Vector } from './vector.ts';
import { alongMm, placeBy, wallLengthMm } from './wall-line.ts';

/** Something of the job that is on a wall's face: an outlet's place, a board's, a unit's. */
interface OnWall {
  wall: string;
  side: Side;
  alongMm: number;
}
/** A corner of a cable's way that lies in a wall. */
interface InWall {
  wall: string;
  at: [number, number];
}

/** Every thing of a job but the house itself that says on which wall it is, wherever in the file it is written. */
export function placesOnWalls(job: Job): {
  readonly onWall: readonly OnWall[];
  readonly inWall: readonly InWall[];
} {
  const onWall: OnWall[] = [];
  const inWall: InWall[] = [];
  const visit = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    if ('wall' in value && typeof value.wall === 'string') {
      if ('alongMm' in value) onWall.push(value as OnWall);
      else if ('at' in value) inWall.push(value as InWall);
    }
    for (const inner of Object.values(value)) visit(inner);
  };
  const { points, boards, legs, schemes } = job;
  visit([points, boards, legs, schemes]);
  return { onWall, inWall };
}

/**
 * Changes walls of a storey so that what stands on them or is let into them stays where it is in the house, or goes with
 * the face that is moved: a wall that moves across its line takes its outlets and what is fixed against it along, one that is lengthened does not.
 */
export function withPlacesKept(job: Job, storey: Storey, change: () => void): void {
  const before = new Map(
    storey.walls.map(({ id, from, to }) => [id, { from: [...from], to: [...to] } as Lie]),
  );
  const { onWall, inWall } = placesOnWalls(job);
  const keepFixtures = keepingFixtures(storey);
  change();
  keepFixtures();
  for (const wall of storey.walls) {
    const was = before.get(wall.id);
    if (was === undefined || isSameLie(was, wall)) continue;
    const anew = (along: number): number => keptAlong(wall, placeBy(was, along));
    for (const place of onWall) if (place.wall === wall.id) place.alongMm = anew(place.alongMm);
    for (const opening of wall.openings) {
      const roomMm = Math.max(0, wallLengthMm(wall) - opening.widthMm);
      opening.alongMm = Math.min(anew(opening.alongMm), roundMm(roomMm));
    }
    for (const corner of inWall)
      if (corner.wall === wall.id) {
        const [x, y] = placeBy(wall, alongMm(wall, corner.at));
        corner.at = [roundMm(x), roundMm(y)];
      }
  }
}

type Lie = Pick<Wall, 'from' | 'to'>;
const isSameLie = (a: Lie, b: Lie): boolean =>
  [0, 1].every((i) => a.from[i] === b.from[i] && a.to[i] === b.to[i]);
const roundMm = (mm: number): number => Math.round(mm * 10) / 10 || 0;
const keptAlong = (wall: Wall, at: Vector): number =>
  roundMm(Math.max(0, Math.min(wallLengthMm(wall), alongMm(wall, at))));
