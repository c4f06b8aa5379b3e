/** Overall dimensions of a flat cable, mm. */
export interface FlatCableSize {
  readonly areaMm2: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
}

/**
 * Typical overall dimensions of flat twin and earth by line area; makers differ by a few tenths.
 * Source: diynot.com wiki, "Flat PVC cables" (BS 6004 cable), one source for thickness.
 */
export const flatCableSizes: readonly FlatCableSize[] = [
  { areaMm2: 1, widthMm: 7.8, thicknessMm: 4.25 },
  { areaMm2: 1.5, widthMm: 8.2, thicknessMm: 5 },
  { areaMm2: 2.5, widthMm: 10.3, thicknessMm: 6 },
  { areaMm2: 4, widthMm: 11.9, thicknessMm: 6.25 },
  { areaMm2: 6, widthMm: 13.5, thicknessMm: 7 },
  { areaMm2: 10, widthMm: 17.1, thicknessMm: 10 },
  { areaMm2: 16, widthMm: 19.4, thicknessMm: 10 },
];

const largest: FlatCableSize = { areaMm2: 16, widthMm: 19.4, thicknessMm: 10 };

/** The listed size that a line area fits, the next larger one for an odd area, the largest beyond the list. */
export function flatCableSize(lineMm2: number): FlatCableSize {
  return flatCableSizes.find((size) => size.areaMm2 >= lineMm2) ?? largest;
}

/** Cross-section of a flat cable with rounded edges, mm²: a rectangle with half a circle at either end. */
export function flatCableSectionMm2({ widthMm, thicknessMm }: FlatCableSize): number {
  return (widthMm - thicknessMm) * thicknessMm + (Math.PI * thicknessMm ** 2) / 4;
}
