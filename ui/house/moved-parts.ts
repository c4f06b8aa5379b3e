import type { Plan } from '#engine/plan/plan.ts';
import { isSameData } from '#engine/plan/same-data.ts';
import type { Storey, Wall } from '#model/building.ts';
import type { Board, Point } from '#model/installation.ts';
import { isSamePlace } from './wall-line.ts';

/** What of a house is drawn otherwise than before, while something of it is held. */
export interface MovedParts {
  /** Walls by id, old and new, those with them that only meet one: how walls are drawn hangs on what they meet. */
  readonly walls: ReadonlySet<string>;
  /** Points and boards by id. */
  readonly points: ReadonlySet<string>;
  /** Whether any fixture is elsewhere. */
  readonly fixtures: boolean;
}

export const nothingMoved: MovedParts = { walls: new Set(), points: new Set(), fixtures: false };

/** One storey of a house and what stands in it, as far as it is compared. */
export interface ComparedHouse {
  readonly storey: Pick<Storey, 'walls' | 'fixtures'>;
  readonly plan: Pick<Plan, 'pointById'>;
  readonly boards: readonly Board[];
}

const meets = (one: Wall, other: Wall): boolean =>
  [one.from, one.to].some((end) => isSamePlace(end, other.from) || isSamePlace(end, other.to));

/** The walls that are other than before, as they are and as they were. */
function changedWalls(before: readonly Wall[], after: readonly Wall[]): readonly Wall[] {
  const [was, is] = [before, after].map((walls) => new Map(walls.map((wall) => [wall.id, wall])));
  return [
    ...before.filter((wall) => !isSameData(wall, is?.get(wall.id))),
    ...after.filter((wall) => !isSameData(wall, was?.get(wall.id))),
  ];
}

/** What is drawn otherwise after than before. */
export function movedParts(before: ComparedHouse, after: ComparedHouse): MovedParts {
  const changed = changedWalls(before.storey.walls, after.storey.walls);
  const met = [...before.storey.walls, ...after.storey.walls].filter((wall) =>
    changed.some((one) => meets(one, wall)),
  );
  const walls = new Set([...changed, ...met].map(({ id }) => id));
  const own = new Set(changed.map(({ id }) => id));
  return { walls, points: movedPoints(before, after, own), fixtures: !isSameFixtures(before, after) };
}

const isSameFixtures = (before: ComparedHouse, after: ComparedHouse): boolean =>
  isSameData(before.storey.fixtures, after.storey.fixtures);

/** What stands on a wall that has changed, or has itself another place. */
function movedPoints(
  before: ComparedHouse,
  after: ComparedHouse,
  changedIds: ReadonlySet<string>,
): ReadonlySet<string> {
  const isOn = (place: Point['place']): boolean =>
    place !== undefined && 'wall' in place && changedIds.has(place.wall);
  const boardBefore = new Map(before.boards.map((board) => [board.id, board]));
  const isMoved = ({ id, place }: Pick<Point, 'id' | 'place'>): boolean =>
    isOn(place) || !isSameData(place, (before.plan.pointById.get(id) ?? boardBefore.get(id))?.place);
  return new Set([...after.plan.pointById.values(), ...after.boards].filter(isMoved).map(({ id }) => id));
}
