import type { Supply } from '#model/installation.ts';

/** Least main bond with PME and a supply neutral of up to 35 mm², mm². Source: BS 7671 Table 54.8. */
const PME_MM2 = 10;
/** Least and largest asked for otherwise, mm². Source: BS 7671 544.1.1 (the upper from memory). */
const LEAST_MM2 = 6;
const MOST_MM2 = 25;

/**
 * Least area of a copper main bond, mm²: by Table 54.8 with PME (TN-C-S, supply neutral up to 35 mm²), else
 * half the earthing conductor between 6 and 25.
 *
 * @returns null where the kind of earthing, or the earthing conductor that counts, is not known. Source: BS 7671 544.1.1, Table 54.8.
 */
export function leastBondMm2({ earthing, earthingMm2 }: Supply): number | null {
  if (earthing === undefined) return null;
  if (earthing === 'TN-C-S') return PME_MM2;
  if (earthingMm2 === undefined) return null;
  return Math.min(MOST_MM2, Math.max(LEAST_MM2, earthingMm2 / 2));
}
