import { table4B1 } from '#data/standards/table-4b1.ts';

/**
 * Factor on the capacity of 70 °C thermoplastic cable for the air's temperature: that of the next listed one
 * above, 1.03 below 25 °C.
 *
 * @returns null above 60 °C, where the table ends.
 * Source: BS 7671 Table 4B1.
 */
export function ambientFactor(celsius: number): number | null {
  return table4B1.rows.find(({ ambientC }) => ambientC >= celsius)?.factorRatio ?? null;
}
