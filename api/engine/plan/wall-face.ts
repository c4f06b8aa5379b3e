import type { Plan, PlanWall } from './plan.ts';
import { distanceMm, type PlanPoint, planPoint, planPointOf, type WallSpot } from './plane.ts';
import { faceNormal } from './position-of-place.ts';
import { remembered } from './remembered.ts';
import { JOIN_MM } from './room-outline.ts';
import { type WallsMeeting, wallsMeeting } from './walls-meeting.ts';

/** Walls within about ten degrees of one line go on as one face. */
const STRAIGHT_SINE = 0.17;
/** A step in thickness up to this is plastered over; more is a corner. */
const STEP_MM = 20;

/** A wall's part of a flat face that may go on over several walls in one line. */
export interface FacePiece {
  readonly wallId: string;
  readonly side: WallSpot['side'];
  /** Where the piece's wall begins (`from`), measured along the face; the wall asked about begins at 0. */
  readonly startMm: number;
  /** 1 where the piece's wall points the same way as the wall asked about, −1 where it points back. */
  readonly sense: 1 | -1;
}

/** A flat face with its inside corners, measured along the wall asked about from its `from`. */
export interface WallFace {
  /** From the low end to the high end. */
  readonly pieces: readonly FacePiece[];
  /** Null where the face ends without an inside corner. */
  readonly lowCornerMm: number | null;
  readonly highCornerMm: number | null;
}

interface Found {
  readonly pieces: readonly FacePiece[];
  readonly cornerMm: number | null;
}

/** The whole flat face that a wall's side is a part of; null for a wall that the plan does not have. */
export function wallFace(
  plan: Pick<Plan, 'wallById'>,
  wallId: string,
  side: WallSpot['side'],
): WallFace | null {
  const wall = plan.wallById.get(wallId);
  return wall === undefined ? null : facesOf(plan.wallById)[side](wall);
}

const facesOf = remembered((wallById: Plan['wallById']) => {
  const meeting = wallsMeeting(wallById);
  return {
    left: remembered((wall: PlanWall) => foundFace(meeting, wall, 'left')),
    right: remembered((wall: PlanWall) => foundFace(meeting, wall, 'right')),
  };
});

function foundFace(meeting: WallsMeeting, wall: PlanWall, side: WallSpot['side']): WallFace {
  const own: FacePiece = { wallId: wall.wall.id, side, startMm: 0, sense: 1 };
  const high = followed(meeting, own, wall, 1);
  const low = followed(meeting, own, wall, -1);
  return {
    pieces: [...low.pieces.toReversed(), own, ...high.pieces],
    lowCornerMm: low.cornerMm,
    highCornerMm: high.cornerMm,
  };
}

/** Follows the face from the wall asked about to one of its ends. */
function followed(meeting: WallsMeeting, own: FacePiece, first: PlanWall, way: 1 | -1): Found {
  const pieces: FacePiece[] = [];
  const seen = new Set([own.wallId]);
  let piece = own;
  let wall = first;
  // Each wall is passed once at most, so this ends.
  for (;;) {
    const next = beyond(meeting, { piece, wall, way });
    if (next.kind !== 'goes-on') return { pieces, cornerMm: next.kind === 'corner' ? next.atMm : null };
    if (seen.has(next.piece.wallId)) return { pieces, cornerMm: null };
    seen.add(next.piece.wallId);
    pieces.push(next.piece);
    piece = next.piece;
    wall = next.wall;
  }
}

type Beyond =
  | { readonly kind: 'goes-on'; readonly piece: FacePiece; readonly wall: PlanWall }
  | { readonly kind: 'corner'; readonly atMm: number }
  | { readonly kind: 'ends' };

interface Travel {
  readonly piece: FacePiece;
  readonly wall: PlanWall;
  readonly way: 1 | -1;
}

/** What is at a wall's end: a branch on our side is a corner, else a wall in line goes on, else nothing. */
function beyond(meeting: WallsMeeting, travel: Travel): Beyond {
  const { piece, wall, way } = travel;
  const endsAtTo = piece.sense === way;
  const junction = planPointOf(endsAtTo ? wall.wall.to : wall.wall.from);
  const junctionMm = piece.startMm + (endsAtTo ? piece.sense * wall.lengthMm : 0);
  const ahead = scaled(wall.direction, endsAtTo ? 1 : -1);
  const normal = faceNormal(wall, piece.side);
  let cornerMm: number | null = null;
  let goesOn: Beyond | null = null;
  for (const other of meeting(wall.storeyId, junction)) {
    if (other.wall.id === wall.wall.id) continue;
    const leaving = leavingFrom(other, junction);
    if (leaving === null) continue;
    const towardsUs = dot(leaving.direction, normal);
    const stepMm = (other.wall.thicknessMm - wall.wall.thicknessMm) / 2;
    if (towardsUs > STRAIGHT_SINE) {
      const pastMm = nearFaceMm({ leaving: leaving.direction, other, ahead, normal, wall });
      // The distance so far shrinks by what the branch's own thickness takes.
      const atMm = junctionMm + way * pastMm;
      if (cornerMm === null || way * atMm < way * cornerMm) cornerMm = atMm;
    } else if (Math.abs(towardsUs) <= STRAIGHT_SINE && dot(leaving.direction, ahead) > 0) {
      if (stepMm > STEP_MM) cornerMm ??= junctionMm;
      else if (stepMm >= -STEP_MM) goesOn = { kind: 'goes-on', ...nextPiece(travel, other, junctionMm) };
    }
  }
  if (cornerMm !== null) return { kind: 'corner', atMm: cornerMm };
  return goesOn ?? { kind: 'ends' };
}

function nextPiece(
  travel: Travel,
  other: PlanWall,
  junctionMm: number,
): { piece: FacePiece; wall: PlanWall } {
  const { piece, wall } = travel;
  const alike = dot(other.direction, wall.direction) > 0;
  const sense = alike ? piece.sense : piece.sense === 1 ? -1 : 1;
  const otherSide = piece.side === 'left' ? 'right' : 'left';
  // The junction is where the next wall begins, or where it ends.
  const beginsHere = sense === travel.way;
  const startMm = beginsHere ? junctionMm : junctionMm + travel.way * other.lengthMm;
  return {
    piece: { wallId: other.wall.id, side: alike ? piece.side : otherSide, startMm, sense },
    wall: other,
  };
}

/** How far past the junction (negative: before it) the near face of a branching wall meets our face. */
function nearFaceMm(at: {
  readonly leaving: readonly [number, number];
  readonly other: PlanWall;
  readonly ahead: readonly [number, number];
  readonly normal: readonly [number, number];
  readonly wall: PlanWall;
}): number {
  const across: readonly [number, number] = [-at.leaving[1], at.leaving[0]];
  const towards = dot(across, at.ahead) < 0 ? across : scaled(across, -1);
  const offMm = at.other.wall.thicknessMm / 2 - (dot(at.normal, towards) * at.wall.wall.thicknessMm) / 2;
  return offMm / dot(at.ahead, towards);
}

function leavingFrom(wall: PlanWall, junction: PlanPoint): { direction: readonly [number, number] } | null {
  const fromMm = distanceMm(planPoint(...wall.wall.from), junction);
  const toMm = distanceMm(planPoint(...wall.wall.to), junction);
  if (Math.min(fromMm, toMm) > JOIN_MM) return null;
  return { direction: scaled(wall.direction, fromMm <= toMm ? 1 : -1) };
}

function dot(a: readonly [number, number], b: readonly [number, number]): number {
  return a[0] * b[0] + a[1] * b[1];
}

function scaled(a: readonly [number, number], factor: 1 | -1): readonly [number, number] {
  return [a[0] * factor, a[1] * factor];
}
