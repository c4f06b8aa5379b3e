import { outlineEdges } from '#engine/plan/room-outline.ts';
import type { Side, Storey, Wall } from '#model/building.ts';
import type { Drawing, Outcome } from './drawing.ts';
import { done, refused } from './drawing.ts';
import { LINE_UP_MM } from './edge-lines.ts';
import { moveEnds } from './move-walls.ts';
import { soundly } from './soundly.ts';
import { dot, leftOf, minus, plus, times, unit, type Vector } from './vector.ts';
import { isAsUsual } from './wall-kinds.ts';
import { alongMm, directionOf, otherSide, roomAt, runOf, type Stretch, wallLengthMm } from './wall-line.ts';
import { wallMap } from './wall-map.ts';
import { withPlacesKept } from './wall-places.ts';

/** Where a new room goes: on the other side of a wall that a room has. */
export interface Beside {
  readonly wallId: string;
  /** The side of the new room. */
  readonly side: Side;
  /** With which end of that wall it lines up, as seen from within the new room, looking at the wall. */
  readonly from: 'left' | 'right';
  /** How far in from that end it begins, mm; less than nought: beyond it. */
  readonly inMm: number;
}

/** The corner at which a new room begins, in its own going round: the wall it shares is the first side. */
export interface Beginning {
  readonly corner: Vector;
  /** Along the shared wall, the room on the left hand. */
  readonly along: Vector;
}

/**
 * Where a room of so long a first side begins beside a wall.
 *
 * @returns null for a wall that no room has on its other side, or whose room does not close.
 */
export function beginningBeside(storey: Storey, beside: Beside, firstSideMm: number): Beginning | null {
  const wall = storey.walls.find(({ id }) => id === beside.wallId);
  const theirs = wall && roomAt(storey, wall.id, otherSide(beside.side));
  if (wall === undefined || theirs === undefined) return null;
  const edges = outlineEdges(theirs, wallMap(storey)).filter(({ wallId }) => wallId === wall.id);
  const [edge] = edges;
  if (edge === undefined) return null;
  // The new room goes round the other way along the wall than the one that has it: from the end of their side to its beginning.
  const along = unit(minus(edge.from, edge.to));
  const through = times(leftOf(along), wall.thicknessMm);
  const inward = times(along, -1);
  const towards = leftOf(along);
  const begin = clearOfWalls(storey, wall, { at: plus(edge.to, through), inward: along, towards });
  const end = clearOfWalls(storey, wall, { at: plus(edge.from, through), inward, towards });
  // Looking at the wall from within, its beginning is on the right hand.
  const corner =
    beside.from === 'right'
      ? plus(begin, times(along, beside.inMm))
      : plus(end, times(along, -firstSideMm - beside.inMm));
  return { corner, along };
}

/**
 * An end of the shared wall, on the new room's face: where a wall stands on that side of it, as on a storey that was copied from
 * below, the end is the face of that wall and not the middle of it.
 */
function clearOfWalls(
  storey: Storey,
  wall: Wall,
  { at, inward, towards }: { readonly at: Vector; readonly inward: Vector; readonly towards: Vector },
): Vector {
  const far = (end: Vector): number => Math.hypot(...minus(end, at));
  const node = far(wall.from) < far(wall.to) ? wall.from : wall.to;
  const depthsMm = storey.walls
    .filter(({ id, core }) => id !== wall.id && core !== 'open')
    .flatMap(({ from, to, thicknessMm }) => {
      if (isSame(from, node)) return standsTo(minus(to, from), towards) ? [thicknessMm / 2] : [];
      if (isSame(to, node)) return standsTo(minus(from, to), towards) ? [thicknessMm / 2] : [];
      return [];
    });
  if (depthsMm.length === 0) return at;
  return plus(at, times(inward, dot(minus(node, at), inward) + Math.max(...depthsMm)));
}

/** Whether two ends are one node: walls are parted where they meet, to the millimetre. */
const isSame = (a: Vector, b: Vector): boolean => Math.hypot(...minus(a, b)) < 1;

/** Whether a wall goes off square to the shared one, near enough for half its thickness to be what it takes of it. */
const standsTo = (away: Vector, towards: Vector): boolean => dot(unit(away), towards) > 0.99;

/** The side that a room of so long a first side has along the wall that it stands beside; null as for `beginningBeside`. */
export function sideBeside(storey: Storey, beside: Beside, firstSideMm: number): Stretch | null {
  const begin = beginningBeside(storey, beside, firstSideMm);
  return begin && { from: begin.corner, to: plus(begin.corner, times(unit(begin.along), firstSideMm)) };
}

/**
 * The thickness that a wall between two rooms may be given while a room is put there; null where it is settled, or where the wall
 * goes on past the room: walls in one line are one wall, and beyond the room it is another's.
 *
 * @param along the side that the new room has along it.
 */
export function openThickness(
  storey: Storey,
  { wallId, side }: Pick<Beside, 'wallId' | 'side'>,
  along: Stretch,
): number | null {
  const wall = storey.walls.find(({ id }) => id === wallId);
  if (wall === undefined) return null;
  const isOpen = runOf(storey, wall).every(
    (one) =>
      isAsUsual(one) &&
      roomAt(storey, one.id, sideAlike(one, wall, side)) === undefined &&
      isCovered(one, along),
  );
  return isOpen ? wall.thicknessMm : null;
}

/** Whether a wall lies along a side of a room, but for what corners take at its ends. */
function isCovered(wall: Wall, along: Stretch): boolean {
  const slackMm = wall.thicknessMm + LINE_UP_MM;
  return [wall.from, wall.to].every((end) => {
    const at = alongMm(along, end);
    return at >= -slackMm && at <= wallLengthMm(along) + slackMm;
  });
}

/** The side of another wall of a run that looks the way that this side of a wall does. */
const sideAlike = (
  one: Parameters<typeof directionOf>[0],
  wall: Parameters<typeof directionOf>[0],
  side: Side,
): Side => (dot(directionOf(one), directionOf(wall)) > 0 ? side : otherSide(side));

/**
 * Makes the whole run of a wall so thick; the face on a side stays where it is, so that the room there keeps its measures.
 *
 * @returns why not, where a room would turn over or stand in another.
 */
export function setThickness(
  { job, storey }: Drawing,
  {
    wallId,
    kept,
    thicknessMm,
  }: { readonly wallId: string; readonly kept: Side; readonly thicknessMm: number },
): Outcome {
  const wall = storey.walls.find(({ id }) => id === wallId);
  if (wall === undefined) return refused('That wall is not there any more.');
  const run = runOf(storey, wall);
  const towardsKept = times(leftOf(directionOf(wall)), kept === 'left' ? 1 : -1);
  const moveMm = (wall.thicknessMm - thicknessMm) / 2;
  return soundly(storey, () => {
    withPlacesKept(job, storey, () => {
      moveEnds(storey, run, times(towardsKept, moveMm));
      for (const one of run) one.thicknessMm = thicknessMm;
    });
    return done;
  });
}
