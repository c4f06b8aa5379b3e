import { describe, expect, it } from 'vitest';
import { counts } from '#model/library.ts';
import { type CountRow, countGroups } from '../../../ui/elements/firm/count-rows.ts';

const rows = countGroups.flatMap((group) => group.rows);
const takes = ({ key }: CountRow, figure: number): boolean => counts.safeParse({ [key]: figure }).success;

describe('the lengths and counts of the firm’s page', () => {
  it('are every one that the library may hold, each once', () => {
    expect(rows.map(({ key }) => key).toSorted()).toEqual(Object.keys(counts.shape).toSorted());
  });

  it.each(rows.map((row) => [row.label, row] as const))('%s: takes what the library takes', (_, row) => {
    const { min, max, usual, whole } = row;
    expect([min, max, usual].map((figure) => takes(row, figure))).toEqual([true, true, true]);
    expect([min - 0.001, max + 0.001].map((figure) => takes(row, figure))).toEqual([false, false]);
    if (row.sizes !== undefined) {
      const taken = Array.from({ length: 200 }, (_, halves) => halves / 2).filter((mm) => takes(row, mm));
      return expect(taken).toEqual(row.sizes);
    }
    if (max - min > 1) expect(takes(row, Math.floor(min) + 1.5)).toBe(!whole);
  });
});
