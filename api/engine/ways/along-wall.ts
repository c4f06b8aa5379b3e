import type { Opening } from '#model/building.ts';
import type { Plan } from '../plan/plan.ts';
import type { Position, WallSpot } from '../plan/plane.ts';
import { facePosition } from '../plan/position-of-place.ts';
import { type FacePiece, type WallFace, wallFace } from '../plan/wall-face.ts';
import { layInWall } from './lay-in-wall.ts';
import type { Candidate, Mount, RouteOptions, RouteRequest } from './route.ts';
import type { Segment } from './run.ts';
import { openLay, segmentBetween } from './segment.ts';
import { studsOnWay } from './studs.ts';

/** Surface cable below this height goes down to the skirting rather than across the wall at box height. */
const LOW_POINT_MM = 700;
/** Height of channel above the skirting. Common practice, no source. */
export const SKIRTING_MM = 80;
/** Boxes back to back within this distance are joined straight through the wall. */
const BACK_TO_BACK_MM = 100;

interface SpotOnFace {
  readonly position: Position;
  /** Along the face, from the start of the wall of `from`. */
  readonly alongMm: number;
}

/** Whether cable in the wall at this height and place would be in a door, a window or a breast on this side. */
export function isOpenAt(opening: Opening, side: WallSpot['side'], heightMm: number): boolean {
  if (opening.kind === 'breast') return opening.side === undefined || opening.side === side;
  return heightMm > opening.sillMm && heightMm < opening.headMm;
}

/**
 * Paths within one flat face of a wall: level at the height of one end, plumb at the other, never diagonal, so
 * that both parts lie in line with an accessory (BS 7671 522.6.202, from memory). Low surface cable goes level
 * above the skirting instead.
 *
 * @returns none unless both ends are on that face and no opening is between them.
 */
export function alongWallCandidates(request: RouteRequest): readonly Candidate[] {
  const { plan, from, to, fromMount, toMount, options } = request;
  const face = from.onWall && wallFace(plan, from.onWall.wallId, from.onWall.side);
  const there = face && alongOnFace(face, to.onWall);
  if (!face || there === null || there === undefined || from.onWall === undefined) return [];
  const start = { position: from, alongMm: from.onWall.alongMm };
  const finish = { position: to, alongMm: there };
  // One cable cannot change from the surface into the wall half-way along.
  const mount = fromMount === 'surface' || toMount === 'surface' ? 'surface' : fromMount;
  const onSurface = layInWall(plan.wallById.get(from.onWall.wallId), mount, options).containment;
  const low = Math.max(from.heightMm, to.heightMm) < LOW_POINT_MM;
  const plumb = Math.abs(start.alongMm - finish.alongMm) < 1;
  const heightsMm = onSurface === 'channel' && low && !plumb ? [SKIRTING_MM] : [from.heightMm, to.heightMm];
  return [...new Set(heightsMm)].flatMap((heightMm) => {
    const segments = acrossFace(plan, face, { start, finish, heightMm, mount, options });
    return segments === null ? [] : [{ segments, rank: 0 }];
  });
}

function alongOnFace(face: WallFace, spot: WallSpot | undefined): number | null {
  const piece = face.pieces.find((each) => each.wallId === spot?.wallId && each.side === spot.side);
  return piece === undefined || spot === undefined ? null : piece.startMm + piece.sense * spot.alongMm;
}

interface Across {
  readonly start: SpotOnFace;
  readonly finish: SpotOnFace;
  readonly heightMm: number;
  readonly mount: Mount;
  readonly options: RouteOptions;
}

function acrossFace(plan: Plan, face: WallFace, across: Across): readonly Segment[] | null {
  const { start, finish, mount, options } = across;
  const stops = levelStops(plan, face, across);
  if (stops === null) return null;
  const segments: Segment[] = [];
  let here = start.position;
  for (const next of [...stops, finish.position]) {
    const wallId = sharedWall(here, next);
    const wall = plan.wallById.get(wallId);
    const lay = layInWall(wall, mount, options);
    const details = {
      wallId,
      side: here.onWall?.side ?? null,
      studsCrossed: studsOnWay(wall, lay.medium, [here, next]),
    };
    const segment = segmentBetween(here, next, lay, details);
    if (segment.lengthMm > 0.01) segments.push(segment);
    here = next;
  }
  const clear = segments.every((segment) => isClear(plan, segment));
  return clear ? segments : null;
}

/** Positions at which the level part begins, changes from wall to wall, and ends. */
function levelStops(plan: Plan, face: WallFace, across: Across): readonly Position[] | null {
  const { start, finish, heightMm } = across;
  const lowMm = Math.min(start.alongMm, finish.alongMm);
  const highMm = Math.max(start.alongMm, finish.alongMm);
  const passed = face.pieces.filter((piece) => {
    const [a, b] = spanOf(plan, piece);
    return b > lowMm + 1e-6 && a < highMm - 1e-6;
  });
  const level = passed.flatMap((piece) => {
    const [a, b] = spanOf(plan, piece);
    return [Math.max(a, lowMm), Math.min(b, highMm)].map((mm) =>
      facePosition(
        plan,
        { wallId: piece.wallId, side: piece.side, alongMm: (mm - piece.startMm) * piece.sense },
        heightMm,
      ),
    );
  });
  if (level.some((position) => position === null)) return null;
  const known = level.filter((position) => position !== null);
  return start.alongMm <= finish.alongMm ? known : known.toReversed();
}

function spanOf(plan: Plan, piece: FacePiece): readonly [number, number] {
  const lengthMm = plan.wallById.get(piece.wallId)?.lengthMm ?? 0;
  return piece.sense === 1
    ? [piece.startMm, piece.startMm + lengthMm]
    : [piece.startMm - lengthMm, piece.startMm];
}

function sharedWall(a: Position, b: Position): string {
  return b.onWall?.wallId ?? a.onWall?.wallId ?? '';
}

function isClear(plan: Plan, segment: Segment): boolean {
  const [a, b] = [segment.from.onWall, segment.to.onWall];
  if (a === undefined || b === undefined || a.wallId !== b.wallId) return true;
  const openings = plan.wallById.get(a.wallId)?.wall.openings ?? [];
  return openings.every((opening) => !isCrossed(opening, segment, a, b));
}

function isCrossed(opening: Opening, segment: Segment, a: WallSpot, b: WallSpot): boolean {
  const startsPast = Math.min(a.alongMm, b.alongMm) >= opening.alongMm + opening.widthMm;
  const endsBefore = Math.max(a.alongMm, b.alongMm) <= opening.alongMm;
  if (startsPast || endsBefore) return false;
  if (segment.direction === 'horizontal') return isOpenAt(opening, a.side, segment.from.heightMm);
  // Plumb cable on a breast's own face crosses nothing.
  if (opening.kind === 'breast') return false;
  const lowMm = Math.min(segment.from.heightMm, segment.to.heightMm);
  const highMm = Math.max(segment.from.heightMm, segment.to.heightMm);
  return highMm > opening.sillMm && lowMm < opening.headMm;
}

/** Straight through the wall between two boxes back to back; none for any other pair. */
export function throughWallCandidates({ plan, from, to }: RouteRequest): readonly Candidate[] {
  const [a, b] = [from.onWall, to.onWall];
  if (a === undefined || b === undefined || a.wallId !== b.wallId || a.side === b.side) return [];
  const aside = Math.abs(a.alongMm - b.alongMm) > BACK_TO_BACK_MM;
  if (aside || Math.abs(from.heightMm - to.heightMm) > BACK_TO_BACK_MM) return [];
  const wall = plan.wallById.get(a.wallId);
  const lay = openLay('through-wall', wall === undefined ? 'assumed' : 'derived');
  return [{ segments: [segmentBetween(from, to, lay, { wallId: a.wallId })], rank: 0 }];
}
