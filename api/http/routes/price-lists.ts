import { createRoute, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { priceListCsv } from '#engine/price/list/own-list.ts';
import { priceListBook } from '#exports/price-list-book.ts';
import { readSheets } from '#imports/read-sheets.ts';
import type { AppEnv } from '../access-guard.ts';
import { jsonAnswer, problemAnswers } from '../answers.ts';
import type { AppParts } from '../app-parts.ts';
import { firmLibrary } from '../firm-library.ts';
import { routeAt } from '../guards.ts';
import { faultDetails, Problem } from '../problems.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';

const BOOK = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

const sheetsBody = z
  .object({
    sheets: z.array(
      z.object({
        name: z.string(),
        rows: z.array(
          z.object({
            number: z.int().meta({ description: 'As a spreadsheet shows it: the first is 1.' }),
            cells: z.array(z.union([z.string(), z.number()])),
          }),
        ),
      }),
    ),
  })
  .openapi('Sheets');

const sheetsRead = createRoute({
  ...routeAt('readSheets'),
  summary: 'Reads a file as sheets of rows: XLSX, or text with separators; nothing is kept',
  description:
    'Of what the cells hold only text and figures are given, formulas as the results that the file carries. Empty rows and hidden sheets are left out. 5 MB, 20,000 rows, 200 columns and 40 MB unpacked are the most.',
  request: {
    body: {
      required: true,
      content: { 'application/octet-stream': { schema: { type: 'string' as const, format: 'binary' } } },
    },
  },
  responses: {
    200: jsonAnswer('The sheets that hold anything.', sheetsBody),
    ...problemAnswers('body-too-large', 'wrong-content-type', 'sheet-unreadable'),
  },
});

const file = (description: string, mediaType: string) => ({
  200: { description, content: { [mediaType]: { schema: { type: 'string' as const, format: 'binary' } } } },
});

const exportPriceList = createRoute({
  ...routeAt('exportPriceList'),
  summary: 'The firm’s price list as CSV, which can be taken in again',
  responses: { ...file('The price list.', 'text/csv'), ...problemAnswers('library-unreadable') },
});

const exportPriceBook = createRoute({
  ...routeAt('exportPriceBook'),
  summary: 'The firm’s price list as a workbook, which can be taken in again',
  responses: { ...file('The price list.', BOOK), ...problemAnswers('library-unreadable') },
});

const named = (name: string, mediaType: string): Record<string, string> => ({
  'Content-Type': mediaType,
  'Content-Disposition': `attachment; filename="${name}"`,
});

/** Price lists as files: a merchant's read, the firm's own given out. */
export function priceListRoutes({ demoLibrary }: AppParts): FirmApp {
  const prices = async (c: Context<AppEnv>) =>
    (await firmLibrary(c.var.stores.library, demoLibrary)).library.prices;
  return resourceApp()
    .openapi(sheetsRead, async (c) => {
      const read = await readSheets(new Uint8Array(await c.req.arrayBuffer()));
      if (read.ok) return c.json({ sheets: read.sheets.map(writable) }, 200);
      const { path, message, remedy } = read.fault;
      throw new Problem('sheet-unreadable', `At ${path}: ${message}. ${remedy}.`, faultDetails([read.fault]));
    })
    .openapi(exportPriceList, async (c) =>
      c.body(priceListCsv(await prices(c)), 200, named('price-list.csv', 'text/csv; charset=utf-8')),
    )
    .openapi(exportPriceBook, async (c) =>
      c.body(new Uint8Array(await priceListBook(await prices(c))), 200, named('price-list.xlsx', BOOK)),
    );
}

/** A sheet as an answer's type has it: its lists are nobody's to change, and the type cannot say so. */
const writable = ({
  name,
  rows,
}: Extract<Awaited<ReturnType<typeof readSheets>>, { ok: true }>['sheets'][number]) => ({
  name,
  rows: rows.map(({ number, cells }) => ({ number, cells: [...cells] })),
});
