import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { findList } from '#engine/price/list/find-columns.ts';
import { importPlan } from '#engine/price/list/import-plan.ts';
import { ownReading, priceListCsv } from '#engine/price/list/own-list.ts';
import { priceListBook } from '#exports/price-list-book.ts';
import { readSheets } from '#imports/read-sheets.ts';
import type { Prices } from '#model/library.ts';
import { listOf, priceOfOne } from '#tests/engine/price/list/list-material.ts';
import { formulasIn, nasty, savedBySpreadsheet } from '#tests/exports/saved-by-spreadsheet.ts';

async function planOf(bytes: Uint8Array, into: Prices) {
  const read = await readSheets(bytes);
  if (!read.ok) throw new Error(read.fault.message);
  const found = findList(read.sheets, []);
  return importPlan(found?.rows ?? [], into, ownReading, { date: '2026-11-26', leftOut: new Set() });
}

const { prices } = demoLibrary();
const nastyCsv = priceListCsv(
  listOf(
    nasty.map((text, at) =>
      priceOfOne('socket-twin', 100 + at, { counter: text, supplier: text, supplierWords: text, code: text }),
    ),
  ),
);

describe('a price list in a spreadsheet that is not ours', () => {
  it('comes back whole after it was opened and saved there, from CSV and from XLSX, and holds no formula', async () => {
    const [fromCsv, opened, bare] = await savedBySpreadsheet({
      'a.csv': priceListCsv(prices),
      'n.csv': nastyCsv,
      'bare.csv': '=1+1,2\n',
    });
    const [fromBook] = await savedBySpreadsheet({ 'b.xlsx': await priceListBook(prices) });
    for (const bytes of [fromCsv, fromBook]) {
      const plan = await planOf(bytes ?? new Uint8Array(), prices);
      expect([plan.faults, plan.changes, plan.unmatched]).toEqual([[], [], []]);
      expect(plan.same).toBe(prices.items.reduce((all, { packs }) => all + 1 + (packs?.length ?? 0), 0));
    }
    expect(await formulasIn(opened ?? new Uint8Array())).toEqual([]);
    // The check itself finds formulas where there are some.
    expect(await formulasIn(bare ?? new Uint8Array())).toEqual(['A1']);
  }, 240_000);

  it.each([
    ['semicolons', 59],
    ['tabs', 9],
  ])(
    'holds no formula where %s are taken for the ends of cells',
    async (_name, separator) => {
      const [opened] = await savedBySpreadsheet({ 'n.csv': nastyCsv }, separator);
      expect(await formulasIn(opened ?? new Uint8Array())).toEqual([]);
    },
    240_000,
  );
});
