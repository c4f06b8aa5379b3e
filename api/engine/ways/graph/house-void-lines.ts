import { placeByWall } from '../../plan/along-wall.ts';
import { breastsOf } from '../../plan/breast.ts';
import { passesBeneath } from '../../plan/passes-beneath.ts';
import type { Plan, PlanRoom } from '../../plan/plan.ts';
import type { Position } from '../../plan/plane.ts';
import { roomsOfStorey, wallsOfStorey } from '../../plan/surroundings.ts';
import { floorVoid, loftOver, type VoidSpace } from '../../plan/voids.ts';
import { atOf, inAxes } from '../joist-axes.ts';
import type { Span } from './flat-face.ts';
import type { PlumbInto } from './house-face-lines.ts';
import type { WaysMaterial } from './house-net.ts';
import { type JoistLane, joistLanes } from './joist-lanes.ts';
import { type Axis, endOf, measureOf, openingAt, SAME_MM, startOf, type WayLine } from './line.ts';
import type { Join } from './net-edge.ts';
import { type VoidFrame, voidFrame } from './void-frame.ts';
import { voidLines } from './void-lines.ts';

/** Lines of a room go on so far past it, into its neighbours; so do the stubs by a drop, mm. */
const PAST_MM = 1500;
/** Cable keeps so far from stairwells and breasts that it goes round, mm. */
const ROUND_MM = 60;
/** Where lines across a room are laid where nothing says where its joists bear, or none is cut. */
const ACROSS_AT = [0.3, 0.7];
/** Two directions are the same, or square to one another, that differ by less. */
const SQUARE_SINE = 1e-3;

/** The lines in the voids of a house, and how the plumb lines of its walls lead into them. */
export interface VoidNet {
  /** Numbered from nought. */
  readonly lines: readonly WayLine[];
  /** Between plumb lines (by their own numbers) and void lines (from `firstLine` on). */
  readonly joins: readonly Join[];
}

/** @param firstLine the number that the first void line gets. */
export function houseVoidLines(
  material: WaysMaterial,
  plumbs: readonly PlumbInto[],
  firstLine: number,
): VoidNet {
  const lines: WayLine[] = [];
  const joins: Join[] = [];
  const known = new Map<string, number>();
  // Stubs of boxes above one another, or in one corner, are the same lines.
  const kept = (line: WayLine): number => {
    const key = `${line.sheet.key} ${line.axis} ${line.fixedMm.toFixed(2)} ${startOf(line).toFixed(2)} ${endOf(line).toFixed(2)}`;
    const number = known.get(key) ?? lines.push(line) - 1;
    known.set(key, number);
    return number;
  };
  for (const frame of voidFrames(material.plan)) for (const line of roomLines(material, frame)) kept(line);
  for (const plumb of plumbs)
    for (const space of [plumb.below, plumb.above]) {
      if (space === null) continue;
      const floorMm = plumb.floorMm;
      for (const stub of stubsAt(material, space, plumb.at, PAST_MM)) {
        // No cable of one's own comes in there: a turn near it is not within reach of a board that is up already.
        const { dropMm: _, ...line } = stub.line;
        const number = firstLine + kept(line);
        joins.push(entry({ line: plumb.line, tMm: space.levelMm - floorMm }, { line: number, stub }));
      }
    }
  return { lines, joins };
}

/** A line through the foot of a plumb line in a void. */
export interface Stub {
  readonly line: WayLine;
  readonly tMm: number;
}

/** The two lines through a place in a void, so far to both sides. */
export function stubsAt(
  material: WaysMaterial,
  space: VoidSpace,
  at: Position['at'],
  reachMm: number,
): readonly Stub[] {
  const frame = voidFrame(material.plan, space);
  const [a, b] = inAxes(frame, at);
  return ([0, 1] as const).flatMap((axis): readonly Stub[] => {
    const [tMm, fixedMm] = axis === 0 ? [a, b] : [b, a];
    const lines = voidLines(material, { frame, axis, fixedMm }, [tMm - reachMm, tMm + reachMm], tMm);
    const own = lines.find((line) => startOf(line) <= tMm && tMm <= endOf(line));
    return own === undefined ? [] : [{ line: own, tMm }];
  });
}

/** From a wall's foot or top into a void: a board comes up there. */
export function entry(
  plumb: { readonly line: number; readonly tMm: number },
  { line, stub }: { readonly line: number; readonly stub: Stub },
): Join {
  const opening = openingAt(stub.line, stub.tMm);
  return { a: plumb, b: { line, tMm: stub.tMm }, measure: measureOf(opening) };
}

/** The voids of a house: under every floor that has one, over every ceiling with a loft. */
export function voidFrames(plan: Plan): readonly VoidFrame[] {
  return plan.storeys.flatMap(({ storey }) => {
    const rooms = roomsOfStorey(plan, storey.id);
    const floors = [storey.floor, ...rooms.flatMap(({ room }) => room.floor ?? [])];
    const under = floors.map((floor) => floorVoid(plan, storey.id, floor)).find((space) => space !== null);
    const over = loftOver(plan, storey.id);
    return [under, over].flatMap((space) => (space ? [voidFrame(plan, space)] : []));
  });
}

function roomLines(material: WaysMaterial, frame: VoidFrame): readonly WayLine[] {
  const { plan } = material;
  const { kind } = frame.space;
  const rooms = roomsOver(plan, frame);
  const wanted = [
    ...rooms.flatMap((room) => edgesOf(room, frame)),
    ...(kind === 'loft' ? [] : inOneLine(rooms.flatMap((room) => acrossOf(plan, room, frame)))),
    ...roundOf(plan, frame),
  ];
  return wanted.flatMap(({ axis, fixedMm, span }) =>
    voidLines(material, { frame, axis, fixedMm }, [span[0] - PAST_MM, span[1] + PAST_MM]),
  );
}

/** The rooms over a void; where none is drawn, it is taken to be divided as the storey below. */
function roomsOver(plan: Plan, { space: { storeyId, kind } }: VoidFrame): readonly PlanRoom[] {
  const closed = (id: string) => roomsOfStorey(plan, id).filter(({ outline }) => outline.length > 0);
  const own = closed(storeyId);
  const belowId = plan.storeyById.get(storeyId)?.belowId ?? null;
  return own.length > 0 || kind === 'loft' || belowId === null ? own : closed(belowId);
}

interface Wanted {
  readonly axis: Axis;
  readonly fixedMm: number;
  readonly span: Span;
}

/** Lines of neighbouring rooms that are one go on as one. */
function inOneLine(all: readonly Wanted[]): readonly Wanted[] {
  const lines: Wanted[] = [];
  const sorted = all.toSorted(
    (a, b) => a.axis - b.axis || a.fixedMm - b.fixedMm || a.span[0] - b.span[0] || a.span[1] - b.span[1],
  );
  for (const next of sorted) {
    const last = lines.at(-1);
    const isSame =
      last?.axis === next.axis &&
      Math.abs(last.fixedMm - next.fixedMm) < SAME_MM &&
      next.span[0] <= last.span[1] + 2 * PAST_MM;
    if (last === undefined || !isSame) lines.push(next);
    else
      lines[lines.length - 1] = {
        ...last,
        span: [Math.min(last.span[0], next.span[0]), Math.max(last.span[1], next.span[1])],
      };
  }
  return lines;
}

/** Along the walls of a room that are square to the frame. */
function edgesOf({ outline }: PlanRoom, frame: VoidFrame): readonly Wanted[] {
  const corners = outline.map((at) => inAxes(frame, at));
  return corners.flatMap((from, index): readonly Wanted[] => {
    const to = corners[(index + 1) % corners.length] ?? from;
    for (const axis of [0, 1] as const) {
      const other = axis === 0 ? 1 : 0;
      if (Math.abs(from[other] - to[other]) > 1 || Math.abs(from[axis] - to[axis]) < 1) continue;
      const span: Span = [Math.min(from[axis], to[axis]), Math.max(from[axis], to[axis])];
      return [{ axis, fixedMm: from[other], span }];
    }
    return [];
  });
}

/** Across the joists of a room, where they may be cut; where none is cut, or nobody knows where they bear, at shares of its extent. */
function acrossOf(plan: Plan, room: PlanRoom, frame: VoidFrame): readonly Wanted[] {
  const { storeyId } = frame.space;
  const ownFloor = room.storeyId === storeyId ? room.room.floor : undefined;
  const floor = ownFloor ?? plan.storeyById.get(storeyId)?.storey.floor;
  const isCut = floor?.build === 'suspended-timber' && !passesBeneath(floor);
  const lanes = isCut ? joistLanes(plan, storeyId, room.outline, floor) : [];
  if (lanes.length > 0) return lanes.flatMap((lane) => wantedLane(lane, frame));
  const [a, b] = extent(room.outline.map((at) => inAxes(frame, at)));
  return ACROSS_AT.map((share) => ({ axis: 1, fixedMm: a[0] + share * (a[1] - a[0]), span: b }));
}

/** A lane as a line of the frame; none where a room's joists lie askew to it. */
function wantedLane({ axes, alongMm, across }: JoistLane, frame: VoidFrame): readonly Wanted[] {
  const ends = across.map((mm) => inAxes(frame, atOf(axes, alongMm, mm)));
  const sine = axes.along[0] * frame.along[1] - axes.along[1] * frame.along[0];
  const isSquare = Math.abs(sine) < SQUARE_SINE || Math.abs(sine) > 1 - SQUARE_SINE;
  if (!isSquare) return [];
  const [a, b] = extent(ends);
  const axis: Axis = Math.abs(sine) < SQUARE_SINE ? 1 : 0;
  return [axis === 1 ? { axis, fixedMm: a[0], span: b } : { axis, fixedMm: b[0], span: a }];
}

/** Round the stairwells and the breasts of a storey. */
function roundOf(plan: Plan, frame: VoidFrame): readonly Wanted[] {
  const { storeyId } = frame.space;
  const wells = plan.storeyById.get(storeyId)?.storey.stairwells ?? [];
  const breasts = wallsOfStorey(plan, storeyId).flatMap((wall) =>
    breastsOf(wall).map(({ along, off }) =>
      along.flatMap((alongMm) => off.map((offMm) => placeByWall(wall, alongMm, offMm))),
    ),
  );
  return [...wells, ...breasts].flatMap((corners) => {
    const [a, b] = extent(corners.map((at) => inAxes(frame, at)));
    return [
      { axis: 1 as const, fixedMm: a[0] - ROUND_MM, span: b },
      { axis: 1 as const, fixedMm: a[1] + ROUND_MM, span: b },
      { axis: 0 as const, fixedMm: b[0] - ROUND_MM, span: a },
      { axis: 0 as const, fixedMm: b[1] + ROUND_MM, span: a },
    ];
  });
}

function extent(corners: readonly (readonly [number, number])[]): readonly [Span, Span] {
  const [first, second] = [corners.map(([a]) => a), corners.map(([, b]) => b)];
  return [
    [Math.min(...first), Math.max(...first)],
    [Math.min(...second), Math.max(...second)],
  ];
}
