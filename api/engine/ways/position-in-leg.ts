import { type Position, planPoint, type WallSpot } from '../plan/plane.ts';
import type { LengthAllowances, Run, Segment } from './run.ts';
import { endMm } from './run-length.ts';

/** A spot so near to a corner of a path is the corner, mm. */
const CORNER_MM = 0.5;

/**
 * Where in the building a spot in a cable is, by walking its path. The path is stretched or shrunk between the
 * two tails so that a measured length fits; spots in a tail are at that end.
 *
 * @param alongMm cable length from the run's `from`.
 * @returns null when the run has no path.
 */
export function positionInLeg(run: Run, alongMm: number, allowances: LengthAllowances): Position | null {
  const first = run.segments[0];
  if (first === undefined || run.routeMm === 0) return run.from.position;
  let leftMm = onRouteMm(run, alongMm, allowances);
  for (const segment of run.segments) {
    if (leftMm < segment.lengthMm - CORNER_MM) return withinSegment(segment, leftMm);
    // A corner is where the stretch says that it ends, on the wall that it comes to there.
    if (leftMm <= segment.lengthMm + CORNER_MM) return segment.to;
    leftMm -= segment.lengthMm;
  }
  return run.segments.at(-1)?.to ?? null;
}

/** How far along a run's path a spot in its cable is, mm; in the tail before the path nought, in that after it its length. */
export function onRouteMm(run: Run, alongMm: number, allowances: LengthAllowances): number {
  const betweenMm = (run.lengthMm ?? run.routeMm + run.endsMm) - run.endsMm;
  // A cable measured shorter than its tails: spread over the whole path.
  const fits = betweenMm > 0;
  const startMm = fits ? endMm(run.from.kind, allowances) : 0;
  const scale = run.routeMm / (fits ? betweenMm : betweenMm + run.endsMm || 1);
  return Math.min(run.routeMm, Math.max(0, (alongMm - startMm) * scale));
}

/** The position in a segment that is so far from its `from`, mm. */
export function withinSegment({ from, to, lengthMm }: Segment, alongMm: number): Position {
  const share = lengthMm === 0 ? 0 : alongMm / lengthMm;
  const between = (a: number, b: number) => a + (b - a) * share;
  const levelMm = between(from.levelMm, to.levelMm);
  const position = {
    storeyId: from.storeyId,
    at: planPoint(between(from.at[0], to.at[0]), between(from.at[1], to.at[1])),
    heightMm: from.heightMm + levelMm - from.levelMm,
    levelMm,
  };
  const onWall = spotBetween(from.onWall, to.onWall, share);
  return onWall === undefined ? position : { ...position, onWall };
}

function spotBetween(a: WallSpot | undefined, b: WallSpot | undefined, share: number): WallSpot | undefined {
  if (a === undefined || b === undefined || a.wallId !== b.wallId || a.side !== b.side) return undefined;
  return { ...a, alongMm: a.alongMm + (b.alongMm - a.alongMm) * share };
}
