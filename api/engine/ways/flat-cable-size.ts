import { flatCableDimensions } from '#data/standards/flat-cable-dimensions.ts';

/** Overall dimensions of a flat cable, mm. */
export interface FlatCableSize {
  readonly areaMm2: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
}

/** The listed size that a line area fits, the next larger one for an odd area, the largest beyond the list. */
export function flatCableSize(lineMm2: number): FlatCableSize {
  const { rows } = flatCableDimensions;
  return rows.find((size) => size.areaMm2 >= lineMm2) ?? rows[6];
}

/** Cross-section of a flat cable with rounded edges, mm²: a rectangle with half a circle at either end. */
export function flatCableSectionMm2({ widthMm, thicknessMm }: FlatCableSize): number {
  return (widthMm - thicknessMm) * thicknessMm + (Math.PI * thicknessMm ** 2) / 4;
}
