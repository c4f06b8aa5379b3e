import type { Plan, PlanRoom, PlanWall } from '#engine/plan/plan.ts';
import { faceNormal } from '#engine/plan/position-of-place.ts';
import type { Side } from '#model/building.ts';

/** A face of a wall as people choose it. */
export interface WallChoice {
  /** Names the face among the choices. */
  readonly value: string;
  readonly label: string;
  /** The name of its storey; absent where the house has one only. */
  readonly group?: string;
  readonly wallId: string;
  readonly side: Side;
}

/** The name of a face among the choices. */
export const faceValue = (wallId: string, side: Side): string => `${wallId}|${side}`;

interface Face {
  readonly wall: PlanWall;
  readonly side: Side;
  readonly label: string;
}

/**
 * Every face of a wall on which something can stand, named by its room and by what lies behind it: "Living room,
 * wall to the hall". Faces of one name are told apart by where on the plan they are, then by number.
 *
 * Storey by storey from the lowest; within it in the order of the rooms and of the rooms' walls, and faces that look into no
 * room last.
 */
export function wallChoices(plan: Plan): readonly WallChoice[] {
  const storeyIds = plan.storeys.map(({ storey }) => storey.id);
  const turn = ({ wall }: Face): number => storeyIds.indexOf(wall.storeyId);
  const faces = [...inRooms(plan), ...outsideRooms(plan)].toSorted((a, b) => turn(a) - turn(b));
  const placed = toldApart(faces, ({ label, wall, side }) => `${label}, ${whereOnPlan(wall, side)}`);
  const numbers = new Map<string, number>();
  return placed.map(({ wall, side, label }) => {
    const number = (numbers.get(label) ?? 0) + 1;
    numbers.set(label, number);
    const isAlone = placed.filter((other) => other.label === label).length === 1;
    return {
      value: faceValue(wall.wall.id, side),
      label: isAlone ? label : `${label} (${number})`,
      ...(storeyIds.length > 1 ? { group: plan.storeyById.get(wall.storeyId)?.storey.name ?? '' } : {}),
      wallId: wall.wall.id,
      side,
    };
  });
}

const otherSide = (side: Side): Side => (side === 'left' ? 'right' : 'left');

function roomBehind(plan: Plan, wallId: string, side: Side): PlanRoom | null {
  const looksIn = ({ room }: PlanRoom): boolean =>
    room.walls.some((face) => face.wall === wallId && face.side === side);
  return [...plan.roomById.values()].find(looksIn) ?? null;
}

function inRooms(plan: Plan): readonly Face[] {
  return plan.storeys.flatMap(({ storey }) =>
    storey.rooms.flatMap((room) =>
      room.walls.flatMap(({ wall: wallId, side }): Face[] => {
        const wall = plan.wallById.get(wallId);
        if (wall === undefined || wall.wall.core === 'open') return [];
        const label = `${room.name}, ${wallName(plan, wall, side)}`;
        return [{ wall, side, label }];
      }),
    ),
  );
}

/** A room within a sentence: "the hall"; one with a figure in its name keeps it as it is: "Bed 2". */
const roomInWords = ({ room: { name } }: PlanRoom): string =>
  /\d/.test(name) ? name : `the ${name.toLowerCase()}`;

function wallName(plan: Plan, { wall }: PlanWall, side: Side): string {
  const behind = roomBehind(plan, wall.id, otherSide(side));
  if (behind !== null) return `wall to ${roomInWords(behind)}`;
  if (wall.party === true) return 'party wall';
  return wall.external ? 'outside wall' : 'wall';
}

function outsideRooms(plan: Plan): readonly Face[] {
  return [...plan.wallById.values()].flatMap((wall) =>
    (['left', 'right'] as const).flatMap((side): Face[] => {
      if (wall.wall.core === 'open' || roomBehind(plan, wall.wall.id, side) !== null) return [];
      const behind = roomBehind(plan, wall.wall.id, otherSide(side));
      const storey = plan.storeyById.get(wall.storeyId)?.storey.name ?? '';
      const label = behind === null ? `${storey}, a wall` : `Outside, at ${roomInWords(behind)}`;
      return [{ wall, side, label }];
    }),
  );
}

function toldApart(faces: readonly Face[], more: (face: Face) => string): readonly Face[] {
  return faces.map((face) =>
    faces.some((other) => other !== face && other.label === face.label)
      ? { ...face, label: more(face) }
      : face,
  );
}

/** Which way someone looks on the plan who looks at the face. */
function whereOnPlan(wall: PlanWall, side: Side): string {
  const [x, y] = faceNormal(wall, side);
  if (Math.abs(x) > Math.abs(y)) return x > 0 ? 'left on the plan' : 'right on the plan';
  return y > 0 ? 'below on the plan' : 'above on the plan';
}
