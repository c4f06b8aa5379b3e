import { onRouteMm, withinSegment } from './position-in-leg.ts';
import type { LengthAllowances, Run, Segment } from './run.ts';

/**
 * The stretches of a run's path that a part of its cable lies in, in order, the first and the last cut to it.
 *
 * @param partMm the part, measured as cable from the run's `from`.
 * @returns for a part that lies in a tail the stretch where that tail starts, cut to nothing.
 */
export function partOfPath(
  run: Run,
  partMm: { readonly fromMm: number; readonly toMm: number },
  allowances: LengthAllowances,
): readonly Segment[] {
  const lowMm = onRouteMm(run, partMm.fromMm, allowances);
  const highMm = onRouteMm(run, partMm.toMm, allowances);
  let endMm = 0;
  const cuts = run.segments.map((segment) => {
    const startMm = endMm;
    endMm += segment.lengthMm;
    return cutSegment(segment, Math.max(0, lowMm - startMm), Math.min(segment.lengthMm, highMm - startMm));
  });
  const held = cuts.filter(({ lengthMm }) => lengthMm > 0);
  if (held.length > 0) return held;
  return cuts.filter(({ lengthMm }) => lengthMm === 0).slice(0, 1);
}

/** Below nought long where the part does not come into the segment. */
function cutSegment(segment: Segment, startMm: number, stopMm: number): Segment {
  if (startMm === 0 && stopMm === segment.lengthMm) return segment;
  const [from, to] = [withinSegment(segment, startMm), withinSegment(segment, stopMm)];
  return { ...segment, from, to, lengthMm: stopMm - startMm };
}
