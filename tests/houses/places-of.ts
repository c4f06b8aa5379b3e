import type { HouseWall, StoreyWalls } from './storey-of.ts';

/** A place on a wall, with where that is on plan. */
export interface FoundPlace {
  readonly wall: string;
  readonly side: 'left' | 'right';
  readonly alongMm: number;
  readonly at: readonly [number, number];
  readonly isStud: boolean;
}

/** From corners, doors and windows to a plate's centre, mm. */
const ASIDE_MM = 350;
/** Between the centres of plates on one wall, whichever side they are on, mm. */
const APART_MM = 500;
/** Places are tried so far apart, mm. */
const STEP_MM = 50;

/** Gives free places on the walls of rooms, each once. */
export type TakePlace = (room: number) => FoundPlace;

/** The places of one storey, taken at random by a seed; throws where a room has none left. */
export function placesOf({ walls, sides }: StoreyWalls, next: () => number): TakePlace {
  const wallById = new Map(walls.map((wall) => [wall.id, wall]));
  const taken = new Map<string, number[]>();
  return (room) => {
    const free = (sides[room] ?? []).flatMap(({ wall: id, side }) => {
      const wall = wallById.get(id);
      if (wall === undefined) return [];
      const others = taken.get(id) ?? [];
      return clearSpots(wall)
        .filter((mm) => others.every((other) => Math.abs(other - mm) >= APART_MM))
        .map((alongMm): FoundPlace => ({ wall: id, side, alongMm, ...onFace(wall, side, alongMm) }));
    });
    const place = free[Math.floor(next() * free.length)];
    if (place === undefined) throw new Error(`Room ${room} has no free wall left.`);
    taken.set(place.wall, [...(taken.get(place.wall) ?? []), place.alongMm]);
    return place;
  };
}

const lengthMm = ({ from, to }: HouseWall): number => to[0] - from[0] + (to[1] - from[1]);

function clearSpots(wall: HouseWall): readonly number[] {
  const many = Math.max(0, Math.floor((lengthMm(wall) - 2 * ASIDE_MM) / STEP_MM) + 1);
  return Array.from({ length: many }, (_, i) => ASIDE_MM + i * STEP_MM).filter((mm) =>
    wall.openings.every(
      ({ alongMm, widthMm }) => mm <= alongMm - ASIDE_MM || mm >= alongMm + widthMm + ASIDE_MM,
    ),
  );
}

/** Walls run to the right or to the back, so their left is behind them or to the left. */
function onFace(wall: HouseWall, side: 'left' | 'right', alongMm: number): Pick<FoundPlace, 'at' | 'isStud'> {
  const offMm = (side === 'left' ? 1 : -1) * (wall.thicknessMm / 2);
  const [x, y] = wall.from;
  const runsRight = wall.to[0] > x;
  return {
    at: runsRight ? [x + alongMm, y + offMm] : [x - offMm, y + alongMm],
    isStud: wall.core === 'timber-stud',
  };
}
