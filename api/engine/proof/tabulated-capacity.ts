import { methodBFlatCable } from '#data/standards/method-b-flat-cable.ts';
import { table4C1 } from '#data/standards/table-4c1.ts';
import { table4D5 } from '#data/standards/table-4d5.ts';
import { table522 } from '#data/standards/table-52-2.ts';
import type { Cable } from '#model/cable.ts';
import type { ReferenceMethod } from './installed-method.ts';

/** A cell of a capacity table, A, with how it is known. */
export interface TabulatedCapacity {
  readonly currentA: number;
  readonly grade: 'seen' | 'memory';
}

/**
 * What a cable may carry by a reference method before any factor.
 *
 * @returns null for other cables than flat twin, and for sizes that are not listed.
 * Source: BS 7671 Table 4D5; method B by Table 4D2A.
 */
export function tabulatedCapacity(cable: Cable, method: ReferenceMethod): TabulatedCapacity | null {
  if (cable.type !== 'flat-twin') return null;
  const row =
    method === 'B'
      ? methodBFlatCable.rows.find((each) => each.areaMm2 === cable.lineMm2)
      : table4D5.rows.find((each) => each.areaMm2 === cable.lineMm2 && each.method === method);
  return row === undefined ? null : { currentA: row.currentA, grade: row.status };
}

/**
 * Factor for a number of cables grouped, 1 for one cable, the least listed beyond the end of the table.
 *
 * @param how `enclosed`: in one tube or channel, or embedded together; `layer`: side by side on a surface.
 * Source: BS 7671 Table 4C1.
 */
export function groupingFactor(cables: number, how: 'enclosed' | 'layer'): number {
  const last = table4C1.rows[table4C1.rows.length - 1];
  const row = table4C1.rows.find((each) => each.cables >= cables) ?? last;
  return how === 'enclosed' ? (row?.enclosedRatio ?? 1) : (row?.layerRatio ?? 1);
}

/**
 * Factor on the clipped-direct capacity of a cable surrounded by insulation over this length.
 * Source: BS 7671 523.9 and Table 52.2.
 */
export function surroundedFactor(lengthMm: number): number {
  const last = table522.rows[table522.rows.length - 1];
  return (table522.rows.find((each) => each.lengthMm >= lengthMm) ?? last)?.factorRatio ?? 0.5;
}
