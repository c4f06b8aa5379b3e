import type { Column, Content } from 'pdfmake/interfaces.js';
import { tokens } from '#drawing/ink.ts';
import type { Scene } from '#drawing/scene.ts';
import { MAKER } from '#engine/engine-version.ts';
import type { QuotedParty } from '#engine/quotation/document.ts';
import { addScenePage, type Pdf } from '../plan/scene-pdf.ts';
import { layOut, MARGIN_MM } from './pdf-page.ts';
import { mm, TEXT_WIDTH_MM } from './pdf-parts.ts';

const PARTY_GAP_MM = 6;
// Set: a column that fits itself to its words would push long ones off the page.
const PARTY_MM = (TEXT_WIDTH_MM - 2 * PARTY_GAP_MM) / 3;
const PAGE_COUNT_MM = 40;

const party = (title: string, { name, lines }: QuotedParty): Column => ({
  width: mm(PARTY_MM),
  stack: [{ text: title, style: 'label' }, { text: name, bold: true }, ...lines],
});

/** From whom, for whom, and where: side by side. */
export const parties = (of: {
  readonly firm: QuotedParty;
  readonly customer: QuotedParty;
  readonly place: readonly string[];
}): Content => ({
  columnGap: mm(PARTY_GAP_MM),
  columns: [
    party('From', of.firm),
    party('For', of.customer),
    { width: mm(PARTY_MM), stack: [{ text: 'Where', style: 'label' }, ...of.place] },
  ],
  margin: [0, 0, 0, 10],
});

/** The line at the foot of every page. */
const footerOf =
  (words: string, sheets: number) =>
  (page: number, pages: number): Content => ({
    margin: [mm(MARGIN_MM), 6, mm(MARGIN_MM), 0],
    fontSize: 8.5,
    color: tokens.inkSoft,
    columns: [
      { width: mm(TEXT_WIDTH_MM - PAGE_COUNT_MM), text: words },
      {
        width: mm(PAGE_COUNT_MM),
        text: `Page ${page} of ${pages}${sheets === 0 ? '' : `, then ${sheets} drawn`}`,
        alignment: 'right',
      },
    ],
  });

/** What a paper is laid out from. */
export interface PaperLayout {
  /** As a reader of PDFs shows it over the page. */
  readonly title: string;
  readonly author: string;
  /** The paper's own day, ISO. */
  readonly date: string;
  /** Before the number of the page. */
  readonly footer: string;
  readonly content: readonly Content[];
  /** Drawings that follow the last page, each on a page of its own size; absent: none. */
  readonly sheets?: readonly Scene[];
}

/**
 * A paper as a PDF on A4, in the look of all of them: text as text, both faces embedded. Equal layouts give equal bytes.
 */
export async function paperPdf(layout: PaperLayout): Promise<Uint8Array> {
  const { title, author, date, footer, content, sheets = [] } = layout;
  const pdf = layOut({
    tagged: true,
    language: 'en-GB',
    displayTitle: true,
    // Of the paper and not of the moment: equal papers are equal files.
    info: { title, author, creator: MAKER, creationDate: new Date(`${date}T00:00:00Z`) },
    footer: footerOf(footer, sheets.length),
    content: [...content],
  });
  if (sheets.length > 0) {
    // The writer's own document, before it is ended: what it laid out stands, and sheets follow.
    const document = (await pdf.getStream()) as Pdf;
    for (const sheet of sheets) {
      addScenePage(document, sheet);
      document.outline.addItem(sheet.title);
    }
  }
  return new Uint8Array(await pdf.getBuffer());
}
