import type { BreastBand } from '../../plan/breast.ts';
import { passesBeneath } from '../../plan/passes-beneath.ts';
import type { Plan, PlanRoom, PlanWall } from '../../plan/plan.ts';
import { planPoint, planPointOf } from '../../plan/plane.ts';
import { roomsOfStorey } from '../../plan/surroundings.ts';
import { BOARD_ACROSS_MM, BOARD_ALONG_MM, floorOpening } from '../floor-opening.ts';
import { liesAlongJoists } from '../joists.ts';
import { isMasonry } from '../lay-in-wall.ts';
import { insideOutline, stretchInBand, type WallBand } from '../path-cuts.ts';
import { openLay } from '../segment.ts';
import { times, type WayTariff } from '../way-tariff.ts';
import type { Span } from './flat-face.ts';
import { type Straight, throughJoists } from './joist-crossings.ts';
import type { LinePart, WayLine } from './line.ts';
import { contentsAlong, type VoidContents } from './void-contents.ts';
import { floorLay, isWarm, loftLay } from './void-lay.ts';

/** Lines are looked at this far to the side where they lie on the very edge of a room, mm. */
const BESIDE_MM = 5;

/** A place so near to a wall's face is on it, mm. */
const FACE_MM = 1.5;

/** What void lines are made from. */
export interface VoidMaterial {
  readonly plan: Plan;
  readonly tariff: WayTariff;
}

/** A stretch of a line with what is there. */
interface Found {
  readonly span: Span;
  readonly kind: 'room' | 'wall' | 'shut';
  readonly room?: PlanRoom;
  readonly wall?: PlanWall;
}

/**
 * The lines that cable may run along in a void at a coordinate: through studwork, through drilled masonry, never
 * through party walls, solid floors, stairwells, breasts or gas pipes.
 *
 * @param from a place on the line that cable surely gets to, in the void or under the foot of a wall.
 */
export function voidLines(
  material: VoidMaterial,
  straight: Straight,
  whole: Span,
  fromMm: number | null = null,
): readonly WayLine[] {
  const found = foundAlong(material.plan, straight, whole, fromMm);
  const stops = [...new Set([...whole, ...found.flatMap(({ span }) => span)])]
    .filter((mm) => mm >= whole[0] && mm <= whole[1])
    .toSorted((a, b) => a - b);
  const pieces = stops.slice(1).flatMap((toMm, index): readonly (LinePart | null)[] => {
    const startMm = stops[index] ?? toMm;
    if (toMm - startMm < 0.01) return [];
    const middle = (startMm + toMm) / 2;
    const here = found.filter(({ span }) => span[0] < middle && middle < span[1]);
    return partsAt(material, straight, [startMm, toMm], { here, fromMm }) ?? [null];
  });
  return chains(pieces).map((parts) => ({
    sheet: straight.frame,
    axis: straight.axis,
    fixedMm: straight.fixedMm,
    parts,
    ...(fromMm === null ? {} : { dropMm: fromMm }),
  }));
}

/** Parts that follow one another without a gap; holes through walls at an end of a chain lead nowhere. */
function chains(pieces: readonly (LinePart | null)[]): readonly (readonly LinePart[])[] {
  const all: LinePart[][] = [];
  let open: LinePart[] = [];
  for (const piece of [...pieces, null]) {
    if (piece !== null) open.push(piece);
    else {
      while (open[0]?.once !== undefined) open.shift();
      while (open.at(-1)?.once !== undefined) open.pop();
      if (open.length > 0) all.push(open);
      open = [];
    }
  }
  return all;
}

interface Here {
  readonly here: readonly Found[];
  readonly fromMm: number | null;
}

function partsAt(
  material: VoidMaterial,
  straight: Straight,
  span: Span,
  at: Here,
): readonly LinePart[] | null {
  const { here, fromMm } = at;
  if (here.some(({ kind }) => kind === 'shut')) return null;
  // Under the very foot of a wall; a chase on its face is not in it, and has the whole wall still to pass.
  const isStart = fromMm !== null && fromMm > span[0] + FACE_MM && fromMm < span[1] - FACE_MM;
  const wall = here.find((each) => each.kind === 'wall')?.wall;
  const room = here.find((each) => each.kind === 'room')?.room ?? null;
  if (straight.frame.space.kind === 'loft') return alone(loftPart(material, straight, span, { wall, room }));
  if (wall !== undefined && isMasonry(wall) && !isStart && room === null)
    return alone(holePart(material, straight, span, wall));
  return floorParts(material, straight, span, { room, isWall: wall !== undefined, fromMm });
}

const alone = (part: LinePart | null): readonly LinePart[] | null => (part === null ? null : [part]);

function holePart(
  { plan, tariff }: VoidMaterial,
  { frame, axis }: Straight,
  [fromMm, toMm]: Span,
  wall: PlanWall,
): LinePart | null {
  const direction = axis === 0 ? frame.along : frame.across;
  const across = Math.abs(direction[0] * wall.leftNormal[0] + direction[1] * wall.leftNormal[1]);
  if (wall.wall.party === true || across < 0.17) return null;
  const storeyId = plan.storeyById.has(frame.space.storeyId) ? frame.space.storeyId : wall.storeyId;
  return {
    fromMm,
    toMm,
    lay: openLay('through-wall', 'derived'),
    details: { wallId: wall.wall.id, storeyId },
    perM: { millipence: 0, minutes: 0, mess: 0 },
    once: tariff.wallHole,
  };
}

function loftPart(
  { plan, tariff }: VoidMaterial,
  { frame }: Straight,
  [fromMm, toMm]: Span,
  { wall, room }: { readonly wall: PlanWall | undefined; readonly room: PlanRoom | null },
): LinePart | null {
  const storey = plan.storeyById.get(frame.space.storeyId);
  if (storey === undefined || wall?.wall.party === true) return null;
  if (room === null && wall === undefined && isDrawn(plan, storey.storey.id)) return null;
  if (!(room?.room.ceiling ?? storey.storey.ceiling).loft) return null;
  const lay = loftLay(storey, room);
  // Few lofts lie bare: where nobody has looked, cable is kept out of them as out of thick insulation.
  const { insulationMm } = room?.room.ceiling ?? storey.storey.ceiling;
  const warm = insulationMm === undefined || isWarm(insulationMm);
  return { fromMm, toMm, lay, details: { storeyId: storey.storey.id }, perM: tariff.thread, warm };
}

/** What a stretch under a floor is beneath, and from where on the line cable comes to it; null where that is not told. */
interface Floored {
  readonly room: PlanRoom | null;
  readonly isWall: boolean;
  readonly fromMm: number | null;
}

function floorParts(
  { plan, tariff }: VoidMaterial,
  straight: Straight,
  [fromMm, toMm]: Span,
  { room, isWall, fromMm: dropMm }: Floored,
): readonly LinePart[] | null {
  const { frame, axis } = straight;
  const storey = plan.storeyById.get(frame.space.storeyId);
  const floor = room?.room.floor ?? storey?.storey.floor;
  if (floor === undefined || storey === undefined || floor.build === 'solid' || floor.voidMm === 0)
    return null;
  const isOutside = room === null && !isWall && isDrawn(plan, storey.storey.id);
  const isShut = floor.liftable === false && storey.belowId === null;
  const isAlong = liesAlongJoists(
    floor,
    planPoint(0, 0),
    planPointOf(axis === 0 ? frame.along : frame.across),
  );
  const lay = floorLay(floor, isAlong);
  const boardMm = floor.build === 'concrete' ? null : isAlong ? BOARD_ALONG_MM : BOARD_ACROSS_MM;
  // Where cable comes in, the boards between there and any place are known; on other lines only how many a metre they are.
  const boards = boardMm === null || dropMm !== null ? 0 : 1000 / boardMm;
  const board = times(tariff.board[floorOpening(floor)], boards);
  const openedBefore = boardMm === null || dropMm === null ? null : boardsFrom(dropMm, boardMm);
  const part: LinePart = {
    fromMm,
    toMm,
    lay: isOutside ? { ...lay, certainty: 'assumed' } : lay,
    details: { storeyId: storey.storey.id },
    perM: {
      millipence: tariff.thread.millipence + board.millipence,
      minutes: tariff.thread.minutes + board.minutes,
      mess: tariff.thread.mess + board.mess,
    },
    ...(floor.build === 'concrete' ? {} : { opening: tariff.board[floorOpening(floor)] }),
    ...(openedBefore === null ? {} : { openedBefore }),
    ...(isOutside || isShut ? { poor: true } : {}),
    warm: isWarm(floor.insulationMm),
  };
  if (floor.build !== 'suspended-timber' || isAlong || passesBeneath(floor)) return [part];
  return throughJoists(plan, straight, floor, part, tariff);
}

/**
 * How many boards come up between where cable comes in and any place on the line to either side, as they are counted: as few, evenly
 * spread, as leave no more than so much between two. Those before it count below nought, so that it never falls.
 */
const boardsFrom =
  (dropMm: number, everyMm: number) =>
  (tMm: number): number =>
    Math.sign(tMm - dropMm) * Math.max(0, Math.ceil(Math.abs(tMm - dropMm) / everyMm) - 1);

/** Whether any room of a storey closes: until then nobody can say what is outside. */
export function isDrawn(plan: Plan, storeyId: string): boolean {
  return roomsOfStorey(plan, storeyId).some(({ outline }) => outline.length > 0);
}

function foundAlong(plan: Plan, straight: Straight, whole: Span, fromMm: number | null): readonly Found[] {
  const { axis, fixedMm } = straight;
  const { rooms, walls, breasts, wells, obstacles } = contentsAlong(plan, straight);
  const beside = besideMm(rooms, straight, fromMm);
  const found: Found[] = [];
  const add = (spans: readonly Span[], what: Omit<Found, 'span'>) => {
    for (const span of spans) if (span[1] > whole[0] && span[0] < whole[1]) found.push({ span, ...what });
  };
  for (const { room, outline } of rooms)
    add(insideOutline(outline, axis, fixedMm + beside), { kind: 'room', room });
  for (const wall of walls) add(acrossWall(wall, straight, 1), { kind: 'wall', wall });
  for (const { wall, band } of breasts) add(inBreast(wall, band, straight), { kind: 'shut' });
  for (const outline of wells) add(insideOutline(outline, axis, fixedMm + beside), { kind: 'shut' });
  for (const outline of obstacles) add(insideOutline(outline, axis, fixedMm), { kind: 'shut' });
  return found;
}

/** A line along a wall's face is on the edge of its room: the room on the one side or the other counts. */
function besideMm(rooms: VoidContents['rooms'], { axis, fixedMm }: Straight, fromMm: number | null): number {
  const lengthAt = (mm: number) => {
    let sum = 0;
    for (const { outline } of rooms)
      for (const [a, b] of insideOutline(outline, axis, fixedMm + mm))
        if (fromMm === null || (fromMm >= a - 1 && fromMm <= b + 1)) sum += b - a;
    return sum;
  };
  const [up, down] = [lengthAt(BESIDE_MM), lengthAt(-BESIDE_MM)];
  if (Math.abs(up - down) < 1) return 0;
  return up > down ? BESIDE_MM : -BESIDE_MM;
}

/** The stretch of a line in the thickness of a wall, a slip inside its faces, so that a cable along a face is not in it. */
function acrossWall(wall: PlanWall, straight: Straight, slipMm: number): readonly Span[] {
  const halfMm = wall.wall.thicknessMm / 2 - slipMm;
  return inBand(wall, straight, { along: [0, wall.lengthMm], off: [-halfMm, halfMm] }, slipMm);
}

/** The stretch of a line in a chimney breast, a slip into its wall, so that a cable along the wall's face does not pass behind it. */
function inBreast(wall: PlanWall, { along, off: [lowMm, highMm] }: BreastBand, straight: Straight) {
  const off: Span = lowMm < 0 ? [lowMm, highMm + 1] : [lowMm - 1, highMm];
  return inBand(wall, straight, { along, off }, 0);
}

/** The stretch of a line that lies within a band by a wall. */
function inBand(
  wall: PlanWall,
  { frame, axis, fixedMm }: Straight,
  band: WallBand,
  widenMm: number,
): readonly Span[] {
  const direction = axis === 0 ? frame.along : frame.across;
  const fixed = axis === 0 ? frame.across : frame.along;
  const from = [fixed[0] * fixedMm, fixed[1] * fixedMm] as const;
  const stretch = stretchInBand(wall, { from, direction }, band);
  return stretch === null ? [] : [[stretch[0] - widenMm, stretch[1] + widenMm]];
}
