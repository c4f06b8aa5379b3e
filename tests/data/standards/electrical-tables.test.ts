import { describe, expect, it } from 'vitest';
import { methodBFlatCable } from '#data/standards/method-b-flat-cable.ts';
import { plugFuses } from '#data/standards/plug-fuses.ts';
import { table4C1 } from '#data/standards/table-4c1.ts';
import { table4D5 } from '#data/standards/table-4d5.ts';
import { table522 } from '#data/standards/table-52-2.ts';
import { terminalCapacity } from '#data/standards/terminal-capacity.ts';

const sizes = [...new Set(table4D5.rows.map(({ areaMm2 }) => areaMm2))];
const methods = ['C', 'A', '100', '101', '102', '103'] as const;
const cell = (areaMm2: number, method: string) =>
  table4D5.rows.find((row) => row.areaMm2 === areaMm2 && row.method === method)?.currentA ?? Number.NaN;
const rises = (values: readonly number[]) =>
  values.every((value, i) => i === 0 || value > (values[i - 1] ?? 0));

describe('the published tables of cable and accessories', () => {
  it('have every method for every size, once', () => {
    expect(table4D5.rows).toHaveLength(sizes.length * methods.length);
    for (const size of sizes) for (const method of methods) expect(cell(size, method)).toBeGreaterThan(0);
  });

  it('rank the methods as physics does: 103 below 101 below 100, and none above C', () => {
    for (const size of sizes) {
      expect(rises([cell(size, '103'), cell(size, '101'), cell(size, '100')])).toBe(true);
      expect(Math.max(...methods.map((method) => cell(size, method)))).toBe(cell(size, 'C'));
    }
  });

  it('have method B between A and C for the same sizes', () => {
    expect(methodBFlatCable.rows.map(({ areaMm2 }) => areaMm2)).toEqual(sizes);
    for (const { areaMm2, currentA } of methodBFlatCable.rows)
      expect(rises([cell(areaMm2, 'A'), currentA, cell(areaMm2, 'C')])).toBe(true);
  });

  it('have factors that fall from one as cables or insulation grow', () => {
    expect(table4C1.rows[0]).toMatchObject({ cables: 1, enclosedRatio: 1, layerRatio: 1 });
    expect(rises(table4C1.rows.map(({ cables }) => cables))).toBe(true);
    expect(rises(table4C1.rows.map(({ enclosedRatio }) => 1 - enclosedRatio))).toBe(true);
    for (const { enclosedRatio, layerRatio } of table4C1.rows)
      expect(enclosedRatio).toBeLessThanOrEqual(layerRatio);
    expect(rises(table522.rows.map(({ lengthMm }) => lengthMm))).toBe(true);
    expect(rises(table522.rows.map(({ factorRatio }) => 1 - factorRatio))).toBe(true);
  });

  it('have fuses and terminals within the product standards', () => {
    expect(plugFuses.rows.map(({ ratingA }) => ratingA)).toEqual([3, 13]);
    const areas = terminalCapacity.rows.map(({ conductors, areaMm2 }) => conductors * areaMm2);
    expect(Math.max(...areas)).toBe(8);
  });

  it('mark every figure, and name a page for every one that was seen in a table of mixed grades', () => {
    const rows: readonly { status: string; page?: string }[] = [
      ...table4D5.rows,
      ...methodBFlatCable.rows,
      ...table522.rows,
    ];
    for (const { status, page } of rows) expect(status === 'seen').toBe(page !== undefined);
  });
});
