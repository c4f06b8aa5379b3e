import type { Position } from '../plan/plane.ts';
import type { Segment } from './run.ts';

/** How a stretch lies, apart from where it is. */
export type Lay = Pick<Segment, 'medium' | 'depthMm' | 'containment' | 'insulation' | 'certainty'>;

/** What may be said of a stretch beside its ends and how it lies. */
export type SegmentDetails = Partial<
  Pick<Segment, 'wallId' | 'side' | 'storeyId' | 'bundle' | 'joistsCrossed' | 'studsCrossed'>
>;

const LEVEL_MM = 0.5;

/** A cable in the open, at no known depth, in nothing. */
export function openLay(medium: Segment['medium'], certainty: Segment['certainty']): Lay {
  return { medium, depthMm: null, containment: 'none', insulation: null, certainty };
}

/** A stretch between two positions; its length and direction follow from them. */
export function segmentBetween(
  from: Position,
  to: Position,
  lay: Lay,
  details: SegmentDetails = {},
): Segment {
  const planMm = Math.hypot(to.at[0] - from.at[0], to.at[1] - from.at[1]);
  const riseMm = to.levelMm - from.levelMm;
  const level = Math.abs(riseMm) <= LEVEL_MM;
  return {
    ...lay,
    from,
    to,
    lengthMm: Math.hypot(planMm, riseMm),
    direction: level ? 'horizontal' : planMm <= LEVEL_MM ? 'vertical' : 'sloping',
    wallId: null,
    side: null,
    storeyId: from.storeyId,
    bundle: null,
    joistsCrossed: 0,
    studsCrossed: 0,
    ...details,
  };
}

/** The same stretches seen from the other end. */
export function reversedSegments(segments: readonly Segment[]): readonly Segment[] {
  return segments.toReversed().map((segment) => ({ ...segment, from: segment.to, to: segment.from }));
}

/** Whether a stretch lies in a floor, a ceiling or a loft. */
export function liesInVoid({ medium }: Pick<Segment, 'medium'>): boolean {
  return medium.startsWith('void-') || medium === 'loft';
}

/** Length of a path, mm. */
export function pathLengthMm(segments: readonly Segment[]): number {
  return segments.reduce((sumMm, segment) => sumMm + segment.lengthMm, 0);
}
