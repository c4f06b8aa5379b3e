import { supplyImpedance } from '#data/standards/supply-impedance.ts';
import type { RowStatus } from '#data/standards/table.ts';
import type { Supply } from '#model/installation.ts';

/**
 * The greatest external loop impedance that distributors declare for an earthing, Ω, for want of a reading.
 *
 * @returns null for TT, where the house's own electrode decides: only a reading tells.
 * Source: distributors' declared values, https://engx.theiet.org/f/wiring-and-regulations/28037/max-ze-values-from-dno/120514.
 */
export function declaredImpedance(
  earthing: NonNullable<Supply['earthing']>,
): { readonly ohm: number; readonly grade: RowStatus } | null {
  const row = impedanceOf('external-loop', earthing);
  return row === undefined ? null : { ohm: row.maximumOhm, grade: row.status };
}

/**
 * Resistance beyond which a house's own earth electrode may not stay steady, Ω.
 * Source: BS 7671 Table 41.5, note.
 */
export function steadyElectrodeOhm(): number {
  return impedanceOf('consumer-electrode', 'TT')?.maximumOhm ?? 0;
}

const impedanceOf = (what: string, earthing: string) =>
  supplyImpedance.rows.find((each) => each.what === what && each.earthing === earthing);
