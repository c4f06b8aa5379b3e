import type { Cable } from '#model/cable.ts';
import type { Segment } from './run.ts';
import { liesInVoid } from './segment.ts';
import {
  between,
  directionOf,
  dot,
  goesOn,
  isParallel,
  lengthOf,
  offLineMm,
  type Spot,
  spotOf,
  type Vector,
} from './spot.ts';

/** A new cable with its way. */
export interface CableInWalls {
  readonly id: string;
  readonly cable: Cable;
  /** What it must carry at the least, A; null where nobody can say. */
  readonly mustCarryA: number | null;
  readonly segments: readonly Segment[];
}

/** A stretch of a cable, and from where to where on a line it lies, mm. */
export interface OnLine {
  readonly of: CableInWalls;
  readonly segment: Segment;
  /** Which of the cable's stretches it is. */
  readonly index: number;
  readonly fromMm: number;
  readonly toMm: number;
  /** Whether the cable comes along the line from its far end. */
  readonly isBackwards: boolean;
}

/** A part of a line on which stretches of two cables or more lie beside each other in one wall, one stretch of each. */
export interface BesideInWall {
  readonly fromMm: number;
  readonly toMm: number;
  readonly stretches: readonly OnLine[];
}

/** Cables whose lines are drawn this near to each other lie beside each other, mm. Common practice, no source. */
export const BESIDE_MM = 60;
/** What lies beside each other for less is a crossing or a corner, mm. Common practice, no source. */
export const WORTH_IT_MM = 100;
/** Places on a line that are nearer to each other are one, mm. */
const SAME_MM = 1;

/** What a cable lays without a turn, with where it is on its line. */
interface Straight {
  readonly from: Spot;
  readonly to: Spot;
  readonly stretches: readonly Pick<OnLine, 'of' | 'segment' | 'index'>[];
}

/**
 * Where new cables are chased beside each other: in one wall and face, in the same tube or capping, within 60 mm, and for 100 mm or
 * more; the tubes of such chases also where they go on into a floor. Nothing is said of what somebody named as one already
 * (`bundle`). The order of the cables does not matter.
 */
export function besideInWalls(cables: readonly CableInWalls[]): readonly BesideInWall[] {
  return linesOf(cables.flatMap(straightsOf)).flatMap(partsOf);
}

const mayLieBeside = ({ medium, containment, bundle }: Segment): boolean =>
  bundle === null && (medium === 'wall-chase' || (containment === 'oval' && liesInVoid({ medium })));

function straightsOf(of: CableInWalls): readonly Straight[] {
  const straights: Straight[] = [];
  for (const [index, segment] of of.segments.entries()) {
    if (!mayLieBeside(segment) || segment.lengthMm < SAME_MM) continue;
    const [from, to] = [spotOf(segment.from), spotOf(segment.to)];
    const before = straights.at(-1);
    const last = before?.stretches.at(-1);
    const isOne =
      before !== undefined &&
      last?.index === index - 1 &&
      last.segment.containment === segment.containment &&
      isInLine(before, from, to);
    const stretch = { of, segment, index };
    if (isOne) straights.splice(-1, 1, { ...before, to, stretches: [...before.stretches, stretch] });
    else straights.push({ from, to, stretches: [stretch] });
  }
  return straights;
}

function isInLine(before: Pick<Straight, 'from' | 'to'>, from: Spot, to: Spot): boolean {
  const [came, goes] = [directionOf(before.from, before.to), directionOf(from, to)];
  return (
    came !== null && goes !== null && goesOn(came, goes) && lengthOf(between(before.to, from)) <= SAME_MM
  );
}

/** Straights that lie on one line. */
type Line = readonly Straight[];

function linesOf(straights: readonly Straight[]): readonly Line[] {
  const lines: Straight[][] = [];
  for (const straight of straights.toSorted(longestFirst)) {
    const line = lines.find(([first]) => first !== undefined && liesOn(straight, first));
    if (line === undefined) lines.push([straight]);
    else line.push(straight);
  }
  return lines;
}

const lengthMmOf = ({ from, to }: Straight): number => lengthOf(between(from, to));

/** Of two that are as long the one that is further left, nearer or lower, whichever way it is laid. */
function longestFirst(a: Straight, b: Straight): number {
  const [one, other] = [lowest(a), lowest(b)];
  const apart = one.map((mm, axis) => mm - (other[axis] ?? 0)).find((mm) => Math.abs(mm) >= SAME_MM);
  const longer = lengthMmOf(b) - lengthMmOf(a);
  return Math.abs(longer) >= SAME_MM ? longer : (apart ?? 0);
}

const lowest = ({ from, to }: Straight): Spot => [
  Math.min(from[0], to[0]),
  Math.min(from[1], to[1]),
  Math.min(from[2], to[2]),
];

function liesOn({ from, to }: Straight, first: Straight): boolean {
  const [axis, direction] = [directionOf(first.from, first.to), directionOf(from, to)];
  if (axis === null || direction === null || !isParallel(axis, direction)) return false;
  return [from, to].every((spot) => offLineMm(first.from, axis, spot) <= BESIDE_MM);
}

/** A stretch on a line, with how far the straight that it is of reaches. */
interface Placed extends OnLine {
  readonly reach: Span;
}

type Span = readonly [fromMm: number, toMm: number];

function partsOf(line: Line): readonly BesideInWall[] {
  const [first] = line;
  const axis = first === undefined ? null : directionOf(first.from, first.to);
  if (first === undefined || axis === null || line.length < 2) return [];
  const placed = line.flatMap((straight) => placedOn(straight, first.from, axis));
  const marks = placed
    .flatMap(({ fromMm, toMm }) => [fromMm, toMm])
    .toSorted((a, b) => a - b)
    .filter((mm, i, all) => i === 0 || mm - (all[i - 1] ?? 0) >= SAME_MM);
  return marks.slice(1).flatMap((toMm, i): readonly BesideInWall[] => {
    const fromMm = marks[i] ?? toMm;
    const middleMm = (fromMm + toMm) / 2;
    const there = placed.filter((each) => each.fromMm < middleMm && each.toMm > middleMm);
    return byFace(there).flatMap((all) => {
      const stretches = all.filter((one) => all.some((other) => isWorthIt(one, other)));
      return stretches.length < 2 ? [] : [{ fromMm, toMm, stretches }];
    });
  });
}

function placedOn({ from, to, stretches }: Straight, origin: Spot, axis: Vector): readonly Placed[] {
  const spanOf = (...ends: readonly [Spot, Spot]): Span => {
    const [a, b] = [dot(between(origin, ends[0]), axis), dot(between(origin, ends[1]), axis)];
    return [Math.min(a, b), Math.max(a, b)];
  };
  const reach = spanOf(from, to);
  return stretches.map((stretch) => {
    const [start, end] = [spotOf(stretch.segment.from), spotOf(stretch.segment.to)];
    const [fromMm, toMm] = spanOf(start, end);
    return { ...stretch, fromMm, toMm, reach, isBackwards: dot(between(start, end), axis) < 0 };
  });
}

/** Stretches by wall and face, or by the void that their tubes lead into, the first of each cable. */
function byFace(placed: readonly Placed[]): readonly (readonly Placed[])[] {
  const faces = new Map<string, Placed[]>();
  for (const each of placed) {
    const { medium, wallId, side, storeyId, containment } = each.segment;
    const name = JSON.stringify([medium, wallId, side, wallId === null ? storeyId : null, containment]);
    const own = faces.get(name) ?? [];
    faces.set(name, own);
    if (!own.some(({ of }) => of === each.of)) own.push(each);
  }
  return [...faces.values()];
}

const isWorthIt = (one: Placed, other: Placed): boolean =>
  one.of !== other.of &&
  Math.min(one.reach[1], other.reach[1]) - Math.max(one.reach[0], other.reach[0]) >=
    WORTH_IT_MM - SAME_MM / 2;
