import type { Opening } from '#model/building.ts';
import type { PlanWall } from './plan.ts';
import { remembered } from './remembered.ts';

/** A chimney breast's depth is not surveyed: it is taken to stand out this far, mm. Assumed, no source. */
export const BREAST_DEPTH_MM = 350;

/** A breast on plan: how far along its wall it reaches, and how far off the wall's centre line, to the left, mm. */
export interface BreastBand {
  readonly along: readonly [lowMm: number, highMm: number];
  readonly off: readonly [lowMm: number, highMm: number];
}

/** The chimney breasts of a wall; one whose side nobody recorded is taken to stand on both. */
export const breastsOf = remembered(({ wall }: PlanWall): readonly BreastBand[] =>
  wall.openings
    .filter(({ kind }) => kind === 'breast')
    .flatMap((breast) => bandsOf(breast, wall.thicknessMm / 2)),
);

function bandsOf({ alongMm, widthMm, side }: Opening, halfMm: number): readonly BreastBand[] {
  const along = [alongMm, alongMm + widthMm] as const;
  const outMm = halfMm + BREAST_DEPTH_MM;
  return [
    ...(side === 'right' ? [] : [{ along, off: [halfMm, outMm] as const }]),
    ...(side === 'left' ? [] : [{ along, off: [-outMm, -halfMm] as const }]),
  ];
}
