import { alongWallMm } from '#engine/plan/along-wall.ts';
import type { Plan, PlanRoom, PlanWall } from '#engine/plan/plan.ts';
import { distanceMm, type PlanPoint, type Position, planPoint, type WallSpot } from '#engine/plan/plane.ts';
import { facePosition, pointOnFace } from '#engine/plan/position-of-place.ts';
import { outlineEdges } from '#engine/plan/room-outline.ts';
import { roomAt, roomOfWallFace, roomsOfStorey, wallsOfStorey } from '#engine/plan/surroundings.ts';
import type { Opening } from '#model/building.ts';

/** A place this near to a wall's face is on it, mm. */
const ON_FACE_MM = 60;
/** Places are told in whole steps of this, mm. */
const STEP_MM = 10;

/** A stretch of a wall's face, from corner to corner as one room has it. */
export interface RoomFace {
  readonly wall: PlanWall;
  readonly side: WallSpot['side'];
  readonly from: PlanPoint;
  readonly to: PlanPoint;
}

/** The faces round a room, and whether they close: then a cable may be led round its corners. */
export interface FacesRound {
  readonly faces: readonly RoomFace[];
  readonly closed: boolean;
}

const wholeFace = (wall: PlanWall, side: WallSpot['side']): RoomFace => ({
  wall,
  side,
  from: pointOnFace(wall, side, 0),
  to: pointOnFace(wall, side, wall.lengthMm),
});

/** The faces round a room, anticlockwise; of one whose walls do not close those that it names. */
export function facesRound(plan: Plan, { room }: PlanRoom): FacesRound {
  const edges = outlineEdges(room, plan.wallById).flatMap(({ wallId, side, from, to }): RoomFace[] => {
    const wall = plan.wallById.get(wallId);
    return wall === undefined ? [] : [{ wall, side, from, to }];
  });
  if (edges.length > 0) return { faces: edges, closed: true };
  const named = room.walls.flatMap(({ wall: id, side }): RoomFace[] => {
    const wall = plan.wallById.get(id);
    return wall === undefined ? [] : [wholeFace(wall, side)];
  });
  return { faces: named, closed: false };
}

/** All faces of a storey's rooms; of all its walls where it has no room. */
export function facesOfStorey(plan: Plan, storeyId: string): readonly RoomFace[] {
  const faces = roomsOfStorey(plan, storeyId).flatMap((room) => facesRound(plan, room).faces);
  if (faces.length > 0) return faces;
  return wallsOfStorey(plan, storeyId).flatMap((wall) => [wholeFace(wall, 'left'), wholeFace(wall, 'right')]);
}

/** The faces that a cable at a place may go on along: those of the room that its wall looks into. */
export function facesAbout(plan: Plan, here: Position): FacesRound {
  const room =
    here.onWall === undefined ? roomAt(plan, here.storeyId, here.at) : roomOfWallFace(plan, here.onWall);
  if (room !== null) return facesRound(plan, room);
  const { onWall } = here;
  const own = facesOfStorey(plan, here.storeyId).filter(
    ({ wall, side }) => wall.wall.id === onWall?.wallId && side === onWall.side,
  );
  return { faces: own, closed: false };
}

/** Where a face begins and ends along its wall, mm, the lower first. */
export function spanOf({ wall, from, to }: RoomFace): readonly [number, number] {
  const [a, b] = [alongWallMm(wall, from), alongWallMm(wall, to)];
  return [Math.min(a, b), Math.max(a, b)];
}

/** A place on a face. */
export interface OnFace {
  readonly face: RoomFace;
  readonly alongMm: number;
  readonly at: PlanPoint;
  /** How far off it what was asked about is, mm. */
  readonly offMm: number;
}

/** The place of a face nearest to a position, in whole steps but at its ends. */
export function nearestOn(face: RoomFace, at: PlanPoint, stepMm: number = STEP_MM): OnFace {
  const [low, high] = spanOf(face);
  const wanted = Math.round(alongWallMm(face.wall, at) / stepMm) * stepMm;
  const alongMm = Math.min(high, Math.max(low, wanted));
  const on = pointOnFace(face.wall, face.side, alongMm);
  return { face, alongMm, at: on, offMm: distanceMm(on, at) };
}

/** The nearest of some faces that are walls; null where none is. */
export function nearestOf(faces: readonly RoomFace[], at: PlanPoint, stepMm?: number): OnFace | null {
  let best: OnFace | null = null;
  for (const face of faces) {
    if (face.wall.wall.core === 'open') continue;
    const on = nearestOn(face, at, stepMm);
    if (best === null || on.offMm < best.offMm - 1e-6) best = on;
  }
  return best;
}

/** The spot on a wall of a storey that a place is at; null where no wall stands there. */
export function wallAt(plan: Plan, storeyId: string, at: PlanPoint): WallSpot | null {
  const on = nearestOf(facesOfStorey(plan, storeyId), at, 1);
  if (on === null || on.offMm > ON_FACE_MM) return null;
  return { wallId: on.face.wall.wall.id, side: on.face.side, alongMm: on.alongMm };
}

const openingWords: Readonly<Record<Opening['kind'], string>> = {
  door: 'a door',
  window: 'a window',
  opening: 'an opening',
  breast: 'the chimney breast',
};

/** What is in the way of a cable along a part of a face at a height; null where nothing is. */
function inTheWay(
  { wall, side }: RoomFace,
  [one, other]: readonly [number, number],
  heightMm: number,
): string | null {
  if (wall.wall.core === 'open') return 'there is no wall to go along';
  const [low, high] = [Math.min(one, other), Math.max(one, other)];
  const met = wall.wall.openings.find(
    (opening) =>
      (opening.kind !== 'breast' || opening.side === undefined || opening.side === side) &&
      heightMm > opening.sillMm &&
      heightMm < opening.headMm &&
      opening.alongMm < high - 1 &&
      opening.alongMm + opening.widthMm > low + 1,
  );
  return met === undefined ? null : `${openingWords[met.kind]} is in the way at this height`;
}

/** A way along faces: its corners after the start, each with the face that leads there. */
export interface AlongFaces {
  readonly corners: readonly { readonly at: PlanPoint; readonly face: RoomFace }[];
  readonly whyNot: string | null;
}

/** Which of the faces a position is on; -1 where on none. */
const indexOn = (faces: readonly RoomFace[], { onWall }: Position): number =>
  onWall === undefined
    ? -1
    : faces.findIndex((face) => {
        const [low, high] = spanOf(face);
        const { wallId, side, alongMm } = onWall;
        return face.wall.wall.id === wallId && face.side === side && alongMm > low - 1 && alongMm < high + 1;
      });

/** Level along the faces from a place on one of them to another, the shorter way round that nothing is in. */
export function alongFaces({ faces, closed }: FacesRound, here: Position, to: OnFace): AlongFaces {
  const [start, end] = [indexOn(faces, here), faces.indexOf(to.face)];
  if (start < 0 || end < 0) return { corners: [], whyNot: 'no wall leads there from where it is' };
  if (start === end) return checked([{ at: to.at, face: to.face }], here);
  if (!closed) return { corners: [], whyNot: 'no wall leads there from where it is' };
  const ways = ([1, -1] as const)
    .map((by) => checked(withoutRepeats(roundTo(faces, { start, end, by }, to), here), here))
    .sort((a, b) => lengthMm(a, here) - lengthMm(b, here));
  return ways.find(({ whyNot }) => whyNot === null) ?? (ways[0] as AlongFaces);
}

const lengthMm = ({ corners }: AlongFaces, here: Position): number =>
  corners.reduce((sum, { at }, i) => sum + distanceMm(corners[i - 1]?.at ?? here.at, at), 0);

function roundTo(
  faces: readonly RoomFace[],
  { start, end, by }: { readonly start: number; readonly end: number; readonly by: 1 | -1 },
  to: OnFace,
): AlongFaces['corners'] {
  const corners: AlongFaces['corners'][number][] = [];
  for (let i = start; i !== end; i = (i + by + faces.length) % faces.length) {
    const face = faces[i] as RoomFace;
    corners.push({ at: by === 1 ? face.to : face.from, face });
  }
  return [...corners, { at: to.at, face: to.face }];
}

/** Without corners at which it is already. */
const withoutRepeats = (corners: AlongFaces['corners'], here: Position): AlongFaces['corners'] =>
  corners.filter(({ at }, i) => distanceMm(corners[i - 1]?.at ?? here.at, at) >= 1);

function checked(corners: AlongFaces['corners'], here: Position): AlongFaces {
  for (const [i, { at, face }] of corners.entries()) {
    const before = corners[i - 1]?.at ?? here.at;
    const span = [alongWallMm(face.wall, before), alongWallMm(face.wall, at)] as const;
    const whyNot = inTheWay(face, span, here.heightMm);
    if (whyNot !== null) return { corners, whyNot };
  }
  return { corners, whyNot: null };
}

/** A place along a room's faces so many mm further on, round its corners (positive: to the right hand of who looks at the wall). */
export function steppedRound({ faces, closed }: FacesRound, from: OnFace, byMm: number): PlanPoint {
  // Round a room anticlockwise is to the left hand of who stands in it.
  let [index, way] = [faces.indexOf(from.face), byMm > 0 ? -1 : 1];
  let at = from.at;
  let leftMm = Math.abs(byMm);
  for (let turns = 0; turns <= faces.length; turns++) {
    const face = faces[index];
    if (face === undefined) return at;
    const target = way === 1 ? face.to : face.from;
    const roomMm = distanceMm(at, target);
    if (leftMm <= roomMm || !closed) {
      const share = roomMm === 0 ? 0 : Math.min(1, leftMm / roomMm);
      return planPoint(at[0] + (target[0] - at[0]) * share, at[1] + (target[1] - at[1]) * share);
    }
    leftMm -= roomMm;
    at = target;
    index = (index + way + faces.length) % faces.length;
    const next = faces[index];
    if (next !== undefined) at = way === 1 ? next.from : next.to;
  }
  return at;
}

/** A position on a face at a height. */
export const positionOn = (plan: Plan, { face, alongMm }: OnFace, heightMm: number): Position | null =>
  facePosition(plan, { wallId: face.wall.wall.id, side: face.side, alongMm }, heightMm);
