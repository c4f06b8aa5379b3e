import type { LengthAllowances, RunEnd, Segment } from './run.ts';
import { pathLengthMm } from './segment.ts';

/** What a path and its ends come to, mm. */
export interface RunLength {
  readonly routeMm: number;
  readonly endsMm: number;
  readonly slackMm: number;
  readonly lengthMm: number | null;
  readonly lowMm: number | null;
  readonly highMm: number | null;
}

/** The tail that one end of a cable takes, mm. */
export function endMm(kind: RunEnd['kind'], allowances: LengthAllowances): number {
  if (kind === 'board') return allowances.boardEndMm;
  return kind === 'joint' ? allowances.jointEndMm : allowances.accessoryEndMm;
}

/**
 * Cable length of a path: its stretches, a tail at each end and the slack, each once. Pinned stretches are
 * exact; derived and assumed ones widen the range by their percentages.
 *
 * @returns lengths of null when an end has no place.
 */
export function runLength(
  segments: readonly Segment[],
  ends: readonly [RunEnd, RunEnd],
  allowances: LengthAllowances,
): RunLength {
  const routeMm = pathLengthMm(segments);
  const endsMm = endMm(ends[0].kind, allowances) + endMm(ends[1].kind, allowances);
  const { slackMm } = allowances;
  if (ends.some(({ position }) => position === null))
    return { routeMm: 0, endsMm, slackMm, lengthMm: null, lowMm: null, highMm: null };
  const lengthMm = routeMm + endsMm + slackMm;
  const doubtMm = segments.reduce(
    (sumMm, segment) => sumMm + (segment.lengthMm * doubtPercent(segment, allowances)) / 100,
    0,
  );
  return { routeMm, endsMm, slackMm, lengthMm, lowMm: lengthMm - doubtMm, highMm: lengthMm + doubtMm };
}

function doubtPercent({ certainty }: Segment, allowances: LengthAllowances): number {
  if (certainty === 'pinned') return 0;
  return certainty === 'derived' ? allowances.derivedPercent : allowances.assumedPercent;
}
