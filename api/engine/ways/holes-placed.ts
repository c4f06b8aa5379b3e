import type { Floor } from '#model/building.ts';
import type { Plan } from '../plan/plan.ts';
import { distanceMm, type PlanPoint, planPoint } from '../plan/plane.ts';
import { roomsOfStorey } from '../plan/surroundings.ts';
import { type JoistPlace, joistPlace } from './joist-place.ts';
import type { Bearing } from './joist-supports.ts';
import type { JoistCut } from './joist-window.ts';
import { joistsMet } from './joists.ts';
import { outlineCutsMm } from './path-cuts.ts';
import { roomBeside } from './room-beside.ts';
import type { Segment } from './run.ts';

/** A hole, or a notch, by which a run passes a joist. */
export interface PlacedHole {
  readonly at: PlanPoint;
  /** The storey whose floor the joist carries. */
  readonly storeyId: string;
  /** Depth of the joist; null where nobody told it. */
  readonly joistDepthMm: number | null;
  /** Which joist: its distance from the plan's origin, square to the joists, mm; null where no joist is placed. */
  readonly joistMm: number | null;
  /** The nearer support along the joist; null where none is drawn, over one, and where no joist is placed. */
  readonly support: Bearing | null;
  /** To that support, 0 over one; null where a support is not drawn or no joist is placed. */
  readonly fromSupportMm: number | null;
  /** Between the supports; null as above, and over a support. */
  readonly spanMm: number | null;
  /** Where an end of the span is only assumed: see `BorneSpan`. */
  readonly isSpanAssumed: boolean;
  readonly judged: JoistCut;
}

/**
 * The holes by which a run's stretches pass joists, in its order: as many as the joists that they cross, and from either end
 * the same. Where the joists' direction is unknown, or the count does not come from the floors drawn, holes are spread
 * evenly and nothing is said of them.
 */
export function holesPlaced(plan: Plan, segments: readonly Segment[]): readonly PlacedHole[] {
  return segments
    .filter(({ joistsCrossed }) => joistsCrossed > 0)
    .flatMap((segment) => holesOf(plan, segment));
}

function holesOf(plan: Plan, segment: Segment): readonly PlacedHole[] {
  const { storeyId, joistsCrossed } = segment;
  const [from, to] = [segment.from.at, segment.to.at];
  // Worked from the lower left end, so that both directions give the same.
  const isTurned = from[0] > to[0] || (from[0] === to[0] && from[1] > to[1]);
  const ends: Ends = isTurned ? [to, from] : [from, to];
  const crossed = chosen(joistsOf(plan, storeyId, ends), joistsCrossed);
  const holes =
    crossed?.map((crossing) => holeAt(plan, storeyId, crossing)) ?? spread(storeyId, ends, joistsCrossed);
  return isTurned ? holes.toReversed() : holes;
}

type Ends = readonly [PlanPoint, PlanPoint];

interface Crossing {
  readonly at: PlanPoint;
  readonly joistMm: number;
  readonly floor: Floor;
  /** Whether the stretch only touches the joist with an end. */
  readonly atEnd: boolean;
}

function between([from, to]: Ends, share: number): PlanPoint {
  return planPoint(from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share);
}

/** Every joist that a stretch meets, by the floors of the rooms that it passes under. */
function joistsOf(plan: Plan, storeyId: string, ends: Ends): readonly Crossing[] {
  const [from, to] = ends;
  const lengthMm = distanceMm(from, to);
  const storey = plan.storeyById.get(storeyId)?.storey;
  if (storey === undefined || lengthMm === 0) return [];
  const direction = [(to[0] - from[0]) / lengthMm, (to[1] - from[1]) / lengthMm] as const;
  const cuts = roomsOfStorey(plan, storeyId)
    .flatMap(({ outline }) => outlineCutsMm(outline, from, direction))
    .filter((mm) => mm > 0 && mm < lengthMm)
    .map((mm) => mm / lengthMm);
  const stops = [0, ...new Set(cuts.toSorted((a, b) => a - b)), 1];
  return stops.slice(1).flatMap((stop, index) => {
    const start = stops[index] ?? 0;
    const part: Ends = [between(ends, start), between(ends, stop)];
    const room = roomBeside(plan, storeyId, between(part, 0.5), direction);
    const floor = room?.room.floor ?? storey.floor;
    return joistsMet(floor, ...part)
      .filter(({ share, atEnd }) => !atEnd || share > 0.5 || start === 0)
      .map(({ joistMm, share, atEnd }): Crossing => {
        const isEnd = atEnd && (share < 0.5 ? start === 0 : stop === 1);
        return { at: between(part, share), joistMm, floor, atEnd: isEnd };
      });
  });
}

/** As many as are crossed: those between the ends, and of those at the ends what is left, the last first; null if that does not come out. */
function chosen(met: readonly Crossing[], count: number): readonly Crossing[] | null {
  const atEnds = met.filter(({ atEnd }) => atEnd);
  const missing = count - (met.length - atEnds.length);
  if (missing < 0 || missing > atEnds.length) return null;
  const left = new Set(missing === 0 ? [] : atEnds.slice(-missing));
  return met.filter((crossing) => !crossing.atEnd || left.has(crossing));
}

function holeAt(plan: Plan, storeyId: string, { at, joistMm, floor }: Crossing): PlacedHole {
  const joistDepthMm = floor.joistDepthMm ?? null;
  return { at, storeyId, joistDepthMm, joistMm, ...ofPlace(joistPlace(plan, storeyId, floor, at)) };
}

const ofPlace = ({ span, ...place }: JoistPlace) => ({
  ...place,
  spanMm: span === null ? null : span.toMm - span.fromMm,
});

const nothingKnown = {
  support: null,
  fromSupportMm: null,
  spanMm: null,
  isSpanAssumed: true,
  judged: 'unknown',
} as const;

function spread(storeyId: string, ends: Ends, count: number): readonly PlacedHole[] {
  return Array.from({ length: count }, (_, index) => ({
    at: between(ends, (index + 1) / (count + 1)),
    storeyId,
    joistDepthMm: null,
    joistMm: null,
    ...nothingKnown,
  }));
}
