import { boughtOf } from '#engine/price/bought.ts';
import { poundsText } from '#engine/price/list/pounds-text.ts';
import type { BillLine } from '#engine/price/totals.ts';
import type { LineContext } from '../line-context.ts';
import { billNote } from '../line-notes.ts';
import { type CsvColumn, type CsvRequest, csvContext, csvOf } from './csv-request.ts';

const columnsFor = (context: LineContext): readonly CsvColumn<BillLine>[] => [
  { header: 'Item', of: ({ item }) => item },
  { header: 'Description', of: ({ description }) => description },
  { header: 'Group', of: ({ group }) => group },
  { header: 'Unit', of: ({ unit }) => unit },
  { header: 'Quantity', of: ({ quantity }) => quantity },
  { header: 'From the van', of: ({ fromStock }) => fromStock },
  { header: 'Pack of', of: ({ packQuantity }) => packQuantity ?? '' },
  { header: 'Packs to buy', of: (line) => boughtOf(line).packs ?? '' },
  { header: 'Left over', of: (line) => boughtOf(line).leftOver },
  { header: 'Charge', of: ({ charge }) => charge },
  { header: 'Charged', of: ({ chargedQuantity }) => chargedQuantity },
  { header: 'Price £', of: ({ priced, pricePence }) => (priced ? poundsText(pricePence) : '') },
  { header: 'Buys', of: ({ priced, perQuantity }) => (priced ? perQuantity : '') },
  { header: 'Cost £', of: ({ priced, costPence }) => (priced ? poundsText(costPence) : '') },
  { header: 'Caused by', of: ({ causes }) => causes.map(context.labelOf).join(', ') },
  { header: 'Note', of: (line) => billNote(line, context) ?? '' },
];

/**
 * The bill of materials of one scheme as CSV, a row a line in the bill's order: what is wanted, what the van holds, what is
 * bought, and what it costs the firm before mark-up and VAT. Nothing stands where the price list has no price.
 */
export function billCsv(request: CsvRequest): string {
  const context = csvContext(request);
  return csvOf(request, context, { columns: columnsFor(context), lines: context.scheme.price.bill });
}
