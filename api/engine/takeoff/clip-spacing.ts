/** Greatest distances between the clips of a cable, mm. */
export interface ClipSpacing {
  readonly horizontalMm: number;
  readonly verticalMm: number;
}

/**
 * Greatest spacing by a cable's overall width; for flat cable the larger dimension counts.
 * Source: IET On-Site Guide Table D1, as given by wiki.diyfaq.org.uk "Cable clip"; its first step ends at
 * 9 mm and the next begins at 10, so what lies between is taken with the closer one.
 */
const steps = [
  { uptoMm: 9, horizontalMm: 250, verticalMm: 400 },
  { uptoMm: 15, horizontalMm: 300, verticalMm: 400 },
  { uptoMm: 20, horizontalMm: 350, verticalMm: 450 },
  { uptoMm: 40, horizontalMm: 400, verticalMm: 550 },
] as const;

/** The spacing for a cable of this overall width; beyond the table its last row. */
export function clipSpacing(widthMm: number): ClipSpacing {
  const step = steps.find((candidate) => widthMm <= candidate.uptoMm) ?? steps[3];
  return { horizontalMm: step.horizontalMm, verticalMm: step.verticalMm };
}

/** Clips on a straight stretch: one at either end and none further apart than the spacing. */
export function clipsAlong(lengthMm: number, spacingMm: number): number {
  return Math.ceil(lengthMm / spacingMm) + 1;
}
