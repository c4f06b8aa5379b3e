import type { Floor } from '#model/building.ts';
import { isGuess } from '../plan/is-guess.ts';
import type { Plan, PlanRoom, PlanWall } from '../plan/plan.ts';
import { distanceMm, type PlanPoint, planPoint, planPointOf } from '../plan/plane.ts';
import { isInStairwell, roomAt, roomsOfStorey, wallsOfStorey } from '../plan/surroundings.ts';
import type { VoidSpace } from '../plan/voids.ts';
import { joistsCrossed, liesAlongJoists } from './joists.ts';
import { isMasonry } from './lay-in-wall.ts';
import { isAcross, isWithin, outlineCutsMm, wallCutsMm } from './path-cuts.ts';
import { inVoid } from './plumb.ts';
import type { Candidate } from './route.ts';
import type { Segment, SegmentCertainty } from './run.ts';
import { type Lay, openLay, segmentBetween } from './segment.ts';

/** A path more than this outside every room and wall drawn is only assumed to be possible. */
const OUTSIDE_MM = 500;
/** A step to either side that is surely off a wall's face. */
const BESIDE_MM = 5;
/** Parts shorter than this are drawing slips, not stretches of cable. */
const SLIP_MM = 0.01;

interface Piece {
  readonly from: PlanPoint;
  readonly to: PlanPoint;
  readonly lay: Lay;
  readonly wallId: string | null;
  readonly joists: number;
  readonly outside: boolean;
  /** Under a floor that cannot be lifted, with no ceiling below it that could be opened instead. */
  readonly shut: boolean;
}

/**
 * The level part of a path in a void: at right angles, along and across the joists, through the masonry walls
 * that stand between. Of the two corners it takes the one that leaves the house less, then crosses fewer
 * joists, then goes along the joists first.
 *
 * @returns null where solid floors or stairwells are in the way of both; rank 1 where it leaves the house or
 * goes under a lowest floor that cannot be lifted.
 */
export function voidPath(plan: Plan, space: VoidSpace, from: PlanPoint, to: PlanPoint): Candidate | null {
  const storeyWalls = wallsOfStorey(plan, space.storeyId);
  const options = corners(plan, space, from, to).flatMap((corner, order) => {
    const first = piecesOf({ plan, space, walls: storeyWalls, from, to: corner });
    const second = piecesOf({ plan, space, walls: storeyWalls, from: corner, to });
    if (first === null || second === null) return [];
    const pieces = [...first, ...second];
    const outsideMm = sum(pieces.map((piece) => (piece.outside ? distanceMm(piece.from, piece.to) : 0)));
    return [{ pieces, order, outsideMm, joists: sum(pieces.map((piece) => piece.joists)) }];
  });
  const [best] = options.toSorted(
    (a, b) => Math.round(a.outsideMm - b.outsideMm) || a.joists - b.joists || a.order - b.order,
  );
  if (best === undefined) return null;
  const outside = best.outsideMm > OUTSIDE_MM;
  const segments = merged(best.pieces).map((piece) => inPlace(plan, space, piece, outside));
  return { segments, rank: outside || best.pieces.some((piece) => piece.shut) ? 1 : 0 };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** The two right-angled corners between two places, square to the joists (or to the plan's axes). */
function corners(plan: Plan, space: VoidSpace, from: PlanPoint, to: PlanPoint): readonly PlanPoint[] {
  const storey = plan.storeyById.get(space.storeyId)?.storey;
  const angle = (((storey?.floor.joistsRunDeg ?? 0) % 180) * Math.PI) / 180;
  const [x, y] = [Math.cos(angle), Math.sin(angle)];
  const alongMm = (to[0] - from[0]) * x + (to[1] - from[1]) * y;
  return [
    planPoint(from[0] + alongMm * x, from[1] + alongMm * y),
    planPoint(to[0] - alongMm * x, to[1] - alongMm * y),
  ];
}

interface Straight {
  readonly plan: Plan;
  readonly space: VoidSpace;
  readonly walls: readonly PlanWall[];
  readonly from: PlanPoint;
  readonly to: PlanPoint;
}

/** A straight stretch cut wherever what it lies in may change; null where it cannot go. */
function piecesOf(whole: Straight): readonly Piece[] | null {
  const { plan, space, walls, from, to } = whole;
  const lengthMm = distanceMm(from, to);
  if (lengthMm < SLIP_MM) return [];
  const direction: readonly [number, number] = [(to[0] - from[0]) / lengthMm, (to[1] - from[1]) / lengthMm];
  const stairwells = plan.storeyById.get(space.storeyId)?.storey.stairwells ?? [];
  const cuts = [
    ...walls.flatMap((wall) => wallCutsMm(wall, from, direction)),
    ...stairwells.flatMap((outline) => outlineCutsMm(outline.map(planPointOf), from, direction)),
  ].filter((mm) => mm > SLIP_MM && mm < lengthMm - SLIP_MM);
  const stops = [0, ...new Set(cuts.toSorted((a, b) => a - b)), lengthMm];
  const straight = { ...whole, walls: walls.filter((wall) => mayHold(wall, from, to)) };
  const pieces: Piece[] = [];
  for (const [index, startMm] of stops.entries()) {
    const endMm = stops[index + 1];
    if (endMm === undefined || endMm - startMm < SLIP_MM) continue;
    const at = (mm: number) =>
      mm === lengthMm ? to : planPoint(from[0] + direction[0] * mm, from[1] + direction[1] * mm);
    const goesOn = endMm < lengthMm;
    const piece = pieceOf(straight, { from: at(startMm), to: at(endMm), direction, goesOn });
    if (piece === null) return null;
    // Dropped slivers are bridged, so that the stretches still join.
    pieces.push({ ...piece, from: pieces.at(-1)?.to ?? from });
  }
  return pieces;
}

/** Whether any place of a straight stretch may be within a wall: their boxes, square to the plan, overlap. */
function mayHold({ wall }: PlanWall, from: PlanPoint, to: PlanPoint): boolean {
  return ([0, 1] as const).every(
    (axis) =>
      Math.min(from[axis], to[axis]) <= Math.max(wall.from[axis], wall.to[axis]) + wall.thicknessMm &&
      Math.max(from[axis], to[axis]) >= Math.min(wall.from[axis], wall.to[axis]) - wall.thicknessMm,
  );
}

interface Stretch {
  readonly from: PlanPoint;
  readonly to: PlanPoint;
  readonly direction: readonly [number, number];
  readonly goesOn: boolean;
}

function pieceOf({ plan, space, walls }: Straight, stretch: Stretch): Piece | null {
  const { from, to, direction, goesOn } = stretch;
  const middle = planPoint((from[0] + to[0]) / 2, (from[1] + to[1]) / 2);
  const common = { from, to, wallId: null, joists: 0, outside: false, shut: false };
  if (space.kind === 'loft') return { ...common, lay: loftLay(plan, space, middle) };
  if (isInStairwell(plan, space.storeyId, middle)) return null;
  const wall = walls.find((each) => isWithin(each, middle) && isMasonry(each) && isAcross(each, direction));
  if (wall !== undefined) return { ...common, lay: openLay('through-wall', 'derived'), wallId: wall.wall.id };
  const storey = plan.storeyById.get(space.storeyId)?.storey;
  const room = roomBeside(plan, space.storeyId, middle, direction);
  const floor = room?.room.floor ?? storey?.floor;
  if (floor === undefined || floor.build === 'solid' || floor.voidMm === 0) return null;
  return {
    ...common,
    lay: floorLay(floor, from, to),
    joists: joistsCrossed(floor, from, to, goesOn),
    shut: floor.liftable === false && isLowest(plan, space.storeyId),
    outside: room === null && isDrawn(plan, space.storeyId) && !walls.some((each) => isWithin(each, middle)),
  };
}

/** The room that a stretch is in; along a wall's face, which is on the room's edge, the room that it looks into. */
export function roomBeside(
  plan: Plan,
  storeyId: string,
  [x, y]: PlanPoint,
  direction: readonly [number, number],
): PlanRoom | null {
  for (const mm of [0, BESIDE_MM, -BESIDE_MM]) {
    const room = roomAt(plan, storeyId, planPoint(x - direction[1] * mm, y + direction[0] * mm));
    if (room !== null) return room;
  }
  return null;
}

function isLowest(plan: Plan, storeyId: string): boolean {
  return plan.storeyById.get(storeyId)?.belowId === null;
}

/** Whether any room of a storey closes: until then nobody can say what is outside. */
function isDrawn(plan: Plan, storeyId: string): boolean {
  return roomsOfStorey(plan, storeyId).some(({ outline }) => outline.length > 0);
}

function floorLay(floor: Floor, from: PlanPoint, to: PlanPoint): Lay {
  const medium =
    floor.build === 'concrete'
      ? 'void-open'
      : liesAlongJoists(floor, from, to)
        ? 'void-along'
        : 'void-across';
  const insulation = floor.insulationMm === undefined ? null : floor.insulationMm > 0 ? 'touching' : 'none';
  return { ...openLay(medium, floorCertainty(floor)), insulation };
}

/** A void is only assumed where its build, its joists' direction or whether it can be opened is not known. */
function floorCertainty(floor: Floor): SegmentCertainty {
  if (floor.build === 'concrete') return 'derived';
  const fields = ['build', 'joistsRunDeg', 'liftable'] as const;
  const known = fields.every((field) => floor[field] !== undefined && !isGuess(floor.certainty?.[field]));
  return known && floor.liftable === true ? 'derived' : 'assumed';
}

function loftLay(plan: Plan, space: VoidSpace, at: PlanPoint): Lay {
  const ceiling =
    roomAt(plan, space.storeyId, at)?.room.ceiling ?? plan.storeyById.get(space.storeyId)?.storey.ceiling;
  const insulationMm = ceiling?.insulationMm;
  const insulation = insulationMm === undefined ? null : insulationMm > 0 ? 'touching' : 'none';
  return { ...openLay('loft', 'derived'), insulation };
}

/** Neighbouring pieces of one kind in one line become one stretch. */
function merged(pieces: readonly Piece[]): readonly Piece[] {
  const result: Piece[] = [];
  for (const piece of pieces) {
    const last = result.at(-1);
    if (last !== undefined && isOneStretch(last, piece)) {
      result[result.length - 1] = { ...last, to: piece.to, joists: last.joists + piece.joists };
    } else result.push(piece);
  }
  return result;
}

function isOneStretch(a: Piece, b: Piece): boolean {
  const alike =
    a.lay.medium === b.lay.medium &&
    a.lay.certainty === b.lay.certainty &&
    a.lay.insulation === b.lay.insulation &&
    a.wallId === b.wallId;
  const wholeMm = distanceMm(a.from, b.to);
  return alike && Math.abs(distanceMm(a.from, a.to) + distanceMm(b.from, b.to) - wholeMm) < SLIP_MM;
}

function inPlace(plan: Plan, space: VoidSpace, piece: Piece, outside: boolean): Segment {
  const { lay, wallId, joists } = piece;
  const ends = [inVoid(plan, space, piece.from), inVoid(plan, space, piece.to)] as const;
  return segmentBetween(...ends, outside ? { ...lay, certainty: 'assumed' } : lay, {
    wallId,
    storeyId: space.storeyId,
    joistsCrossed: joists,
  });
}
