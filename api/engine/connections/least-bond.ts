import type { Supply } from '#model/installation.ts';

/** Least main bond with PME and a supply neutral of up to 35 mm², mm². Source: BS 7671 Table 54.8. */
const PME_MM2 = 10;
/** Least and largest asked for otherwise, mm². Source: BS 7671 544.1.1 (the upper from memory). */
const LEAST_MM2 = 6;
const MOST_MM2 = 25;

/** What a least bond goes by: the table with PME, half the earthing conductor, or the least and the largest that is ever asked for. */
export type BondBasis = 'pme' | 'half' | 'least' | 'most';

/** A least area, mm², and what it goes by. */
export interface LeastBond {
  readonly mm2: number;
  readonly by: BondBasis;
}

/**
 * Least area of a copper main bond, mm²: by Table 54.8 with PME (TN-C-S, supply neutral up to 35 mm²), else
 * half the earthing conductor between 6 and 25.
 *
 * @returns null where the kind of earthing, or the earthing conductor that counts, is not known. Source: BS 7671 544.1.1, Table 54.8.
 */
export function leastBond({ earthing, earthingMm2 }: Supply): LeastBond | null {
  if (earthing === undefined) return null;
  if (earthing === 'TN-C-S') return { mm2: PME_MM2, by: 'pme' };
  if (earthingMm2 === undefined) return null;
  const half = earthingMm2 / 2;
  if (half > MOST_MM2) return { mm2: MOST_MM2, by: 'most' };
  return half < LEAST_MM2 ? { mm2: LEAST_MM2, by: 'least' } : { mm2: half, by: 'half' };
}

/** The least area alone, mm²; null as above. */
export const leastBondMm2 = (supply: Supply): number | null => leastBond(supply)?.mm2 ?? null;
