import { breastsOf } from '../plan/breast.ts';
import { isGuess } from '../plan/is-guess.ts';
import type { Plan, PlanRoom, PlanWall } from '../plan/plan.ts';
import { planPointOf } from '../plan/plane.ts';
import { isInside } from '../plan/polygon.ts';
import { rememberedOfTwo } from '../plan/remembered.ts';
import { roomsOfStorey, wallsOfStorey } from '../plan/surroundings.ts';
import { atOf, inAxes, type JoistAxes } from './joist-axes.ts';
import type { JoistSpan } from './joist-window.ts';
import { isMasonry } from './lay-in-wall.ts';
import { insideOutline, isAcross, type PlanLine, type Stretch, stretchInBand } from './path-cuts.ts';

/** Places nearer than this along a joist are one, mm. */
const SAME_MM = 0.5;
/** A step along a joist that surely leaves a support. */
const STEP_MM = 5;
/** Rooms further apart than a wall have something else between them, mm. */
const WALL_MM = 600;

/** What an end of a joist bears on. */
export interface Bearing {
  /** Along the joist, from the plan's origin. */
  readonly mm: number;
  /** The edge of a room whose wall is not known to carry; the trimmer by a stairwell; the one before a breast. */
  readonly on: 'wall' | 'breast' | 'trimmer' | 'edge';
  /** The wall that carries or has the breast: on the joist's own storey where one stands there, else on the one below. */
  readonly wallId: string | null;
  /** Whether it is no wall, or one that is only thought to carry. */
  readonly isAssumed: boolean;
}

/** A joist between two bearings, both measured along it from the plan's origin. */
export interface BorneSpan extends JoistSpan {
  readonly low: Bearing;
  readonly high: Bearing;
  /**
   * True where an end is, where a wall below may carry for all anybody has said, and on the lowest storey, where nobody sees the
   * sleeper walls (common practice, no source).
   */
  readonly isAssumed: boolean;
}

/** Where a joist bears to either side of a place. */
export interface JoistSupports {
  /** Null where no support is drawn on one side, and over a support. */
  readonly span: BorneSpan | null;
  /** Whether the place is over a wall that carries the joist, or over another of its supports. */
  readonly isOverSupport: boolean;
}

/** Something that carries a joist, from face to face. */
interface Solid {
  readonly low: Bearing;
  readonly high: Bearing;
}

interface Lane {
  readonly solids: readonly Solid[];
  readonly spans: readonly BorneSpan[];
}

/** Whether joists may bear on a wall: what the survey says of it, else whether it is masonry. */
const carries = (wall: PlanWall): boolean => wall.wall.structural ?? isMasonry(wall);

/** Whether that is only thought to be so. */
const isThought = ({ wall: { structural, certainty } }: PlanWall): boolean =>
  isGuess(structural === undefined ? certainty?.core : certainty?.structural);

/** Whether a wall that is taken not to carry may do so for all that anybody has said: studs that nobody has looked at. */
const mayCarry = (wall: PlanWall): boolean =>
  !carries(wall) &&
  (isThought(wall) || (wall.wall.structural === undefined && wall.wall.core.endsWith('stud')));

/**
 * Where the joist under a place of a storey bears: on either side the nearest wall of masonry or of structure on its own
 * storey or on the one below, chimney breast, stairwell, or edge of a room under which nothing goes on below. So joists go on
 * beneath a partition that stands on them. As far as a drawing tells: they may bear on what nobody has drawn.
 *
 * @param at along the joists and across them, by `axes`.
 */
export function joistSupports(
  plan: Plan,
  storeyId: string,
  axes: JoistAxes,
  [alongMm, acrossMm]: readonly [number, number],
): JoistSupports {
  const { solids, spans } = laneOf(plan, storeyId, axes, acrossMm);
  const span = spans.find(({ low, high }) => alongMm >= low.mm - SAME_MM && alongMm <= high.mm + SAME_MM);
  if (span !== undefined) return { span, isOverSupport: false };
  const isOverSupport = solids.some(({ low, high }) => alongMm > low.mm && alongMm < high.mm);
  return { span: null, isOverSupport };
}

/** The spans of a joist from its first support to its last, in order. */
export const joistSpans = (
  plan: Plan,
  storeyId: string,
  axes: JoistAxes,
  acrossMm: number,
): readonly BorneSpan[] => laneOf(plan, storeyId, axes, acrossMm).spans;

/** A joist, worked when it is first asked for: ways ask for the same few again and again. */
function laneOf(plan: Plan, storeyId: string, axes: JoistAxes, acrossMm: number): Lane {
  const all = bearersOf(plan, storeyId, axes);
  const key = Math.round(acrossMm * 100);
  const lane = all.lanes.get(key) ?? workedLane(all, acrossMm);
  all.lanes.set(key, lane);
  return lane;
}

/** What there is for the joists of one direction on a storey to bear on. */
interface Bearers {
  readonly axes: JoistAxes;
  readonly walls: readonly PlanWall[];
  readonly undecided: readonly PlanWall[];
  readonly breasted: readonly PlanWall[];
  readonly rooms: readonly Outline[];
  readonly stairwells: readonly Outline[];
  readonly roomsBelow: readonly PlanRoom[];
  readonly isLowest: boolean;
  /** Those worked already, by hundredths of a millimetre across. */
  readonly lanes: Map<number, Lane>;
}

type Outline = readonly (readonly [number, number])[];

const bearers = rememberedOfTwo((_plan: Plan, _axes: JoistAxes) => new Map<string, Bearers>());

function bearersOf(plan: Plan, storeyId: string, axes: JoistAxes): Bearers {
  const known = bearers(plan, axes);
  const own = known.get(storeyId) ?? gathered(plan, storeyId, axes);
  known.set(storeyId, own);
  return own;
}

function gathered(plan: Plan, storeyId: string, axes: JoistAxes): Bearers {
  const storey = plan.storeyById.get(storeyId);
  const belowId = storey?.belowId ?? null;
  const below = belowId === null ? [] : wallsOfStorey(plan, belowId);
  const walls = [...wallsOfStorey(plan, storeyId), ...below];
  const met = (wall: PlanWall) => isAcross(wall, axes.along);
  const turned = (outline: Outline): Outline => outline.map((at) => inAxes(axes, at));
  return {
    axes,
    walls: walls.filter((wall) => carries(wall) && met(wall)),
    undecided: below.filter((wall) => mayCarry(wall) && met(wall)),
    breasted: walls.filter((wall) => breastsOf(wall).length > 0),
    rooms: roomsOfStorey(plan, storeyId).map(({ outline }) => turned(outline)),
    stairwells: (storey?.storey.stairwells ?? []).map(turned),
    roomsBelow: belowId === null ? [] : roomsOfStorey(plan, belowId),
    isLowest: belowId === null,
    lanes: new Map(),
  };
}

function workedLane(all: Bearers, acrossMm: number): Lane {
  const { axes } = all;
  const line: PlanLine = { from: atOf(axes, 0, acrossMm), direction: axes.along };
  const solids = merged([
    ...all.walls.flatMap((wall) => ofWall(wall, line)),
    ...all.breasted.flatMap((wall) => ofBreasts(wall, line)),
    ...all.stairwells.flatMap((outline) =>
      insideOutline(outline, 0, acrossMm).map((stretch) =>
        solid(stretch, { on: 'trimmer', wallId: null, isAssumed: true }),
      ),
    ),
    ...ofEdges(all, acrossMm),
  ]);
  const undecided = all.undecided.flatMap((wall) => ofWall(wall, line));
  const spans = solids.slice(1).map((next, index): BorneSpan => {
    const [low, high] = [solids[index]?.high ?? next.low, next.low];
    const isOverUndecided = undecided.some((each) => each.low.mm < high.mm && each.high.mm > low.mm);
    const isAssumed = all.isLowest || low.isAssumed || high.isAssumed || isOverUndecided;
    return { fromMm: low.mm, toMm: high.mm, low, high, isAssumed };
  });
  return { solids, spans };
}

const solid = ([lowMm, highMm]: Stretch, bearing: Omit<Bearing, 'mm'>): Solid => ({
  low: { mm: lowMm, ...bearing },
  high: { mm: highMm, ...bearing },
});

function ofWall(wall: PlanWall, line: PlanLine): readonly Solid[] {
  const halfMm = wall.wall.thicknessMm / 2;
  const band = { along: [-SAME_MM, wall.lengthMm + SAME_MM], off: [-halfMm, halfMm] } as const;
  const stretch = stretchInBand(wall, line, band);
  const bearing = { on: 'wall', wallId: wall.wall.id, isAssumed: isThought(wall) } as const;
  return stretch === null ? [] : [solid(stretch, bearing)];
}

/** Joists are trimmed before a chimney breast; how far before it nobody has said. */
function ofBreasts(wall: PlanWall, line: PlanLine): readonly Solid[] {
  return breastsOf(wall).flatMap((band) => {
    const stretch = stretchInBand(wall, line, band);
    const bearing = { on: 'breast', wallId: wall.wall.id, isAssumed: true } as const;
    return stretch === null ? [] : [solid(stretch, bearing)];
  });
}

const edge = { on: 'edge', wallId: null, isAssumed: true } as const;

/** The edges of a storey's rooms, save where a room below goes on beneath them; with the wall between two rooms, if it is one. */
function ofEdges({ axes, rooms, roomsBelow }: Bearers, acrossMm: number): readonly Solid[] {
  const inside = (atMm: number) => rooms.flatMap((outline) => insideOutline(outline, 0, atMm));
  // A joist on the very edge of a room is that room's.
  const here = inside(acrossMm);
  const stretches = (here.length > 0 ? here : inside(acrossMm - 1)).toSorted((a, b) => a[0] - b[0]);
  const isOpen = (mm: number) =>
    [mm - STEP_MM, mm + STEP_MM].every((each) => {
      const at = planPointOf(atOf(axes, each, acrossMm));
      return roomsBelow.some(({ outline }) => isInside(outline, at));
    });
  return stretches.flatMap(([lowMm, highMm], index) => {
    const nextMm = stretches[index + 1]?.[0] ?? Number.POSITIVE_INFINITY;
    const isWallNext = nextMm - highMm <= WALL_MM && !isOpen(nextMm);
    const end: Stretch = [highMm, isWallNext ? nextMm : highMm];
    return [
      ...(isOpen(lowMm) ? [] : [solid([lowMm, lowMm], edge)]),
      ...(isOpen(highMm) ? [] : [solid(end, edge)]),
    ];
  });
}

/** In order, those that touch as one; each face is that of a wall that carries, where there is one. */
function merged(all: readonly Solid[]): readonly Solid[] {
  const result: Solid[] = [];
  for (const next of all.toSorted((a, b) => a.low.mm - b.low.mm)) {
    const last = result.at(-1);
    if (last === undefined || next.low.mm > last.high.mm + SAME_MM) result.push(next);
    else
      result[result.length - 1] = {
        low: firmer(last.low, next.low, next.low.mm - last.low.mm),
        high: firmer(last.high, next.high, last.high.mm - next.high.mm),
      };
  }
  return result;
}

/** The face further out; of two at one place the wall's. @param behindMm how far the second is behind the first. */
function firmer(first: Bearing, second: Bearing, behindMm: number): Bearing {
  if (Math.abs(behindMm) > SAME_MM) return behindMm > 0 ? first : second;
  return first.isAssumed && !second.isAssumed ? second : first;
}
