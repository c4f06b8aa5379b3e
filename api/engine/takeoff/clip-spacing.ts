import { clipSpacingTable } from '#data/standards/clip-spacing.ts';

/** Greatest distances between the clips of a cable, mm. */
export interface ClipSpacing {
  readonly horizontalMm: number;
  readonly verticalMm: number;
}

/** The spacing for a cable of this overall width; beyond the table its last row. */
export function clipSpacing(widthMm: number): ClipSpacing {
  const { rows } = clipSpacingTable;
  const step = rows.find((candidate) => widthMm <= candidate.uptoMm) ?? rows[3];
  return { horizontalMm: step.horizontalMm, verticalMm: step.verticalMm };
}

/** Clips on a straight stretch: one at either end and none further apart than the spacing. */
export function clipsAlong(lengthMm: number, spacingMm: number): number {
  return Math.ceil(lengthMm / spacingMm) + 1;
}
