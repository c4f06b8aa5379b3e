import pdfmake from 'pdfmake';
import type { Column, Content, TableCell, TDocumentDefinitions } from 'pdfmake/interfaces.js';
import { tokens } from '#drawing/ink.ts';
import type { QuotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import type { QuotationDocument, QuotedParty } from '#engine/quotation/document.ts';
import { fontFiles, pdfFonts } from './quotation/pdf-fonts.ts';
import { comparison, optionContent, priceBlock } from './quotation/pdf-options.ts';
import {
  form,
  heading,
  listUnder,
  mm,
  paragraph,
  passage,
  ruledTable,
  TEXT_WIDTH_MM,
  withOptions,
} from './quotation/pdf-parts.ts';

pdfmake.setFonts(pdfFonts);
// Nothing is fetched, and of this machine only the fonts are read.
pdfmake.setUrlAccessPolicy(() => false);
pdfmake.setLocalAccessPolicy((path: string) => fontFiles.has(path));

const MARGIN_MM = 18;
const PARTY_GAP_MM = 6;
// Set: a column that fits itself to its words would push long ones off the page.
const PARTY_MM = (TEXT_WIDTH_MM - 2 * PARTY_GAP_MM) / 3;
const PAGE_COUNT_MM = 30;

const party = (title: string, { name, lines }: QuotedParty): Column => ({
  width: mm(PARTY_MM),
  stack: [{ text: title, style: 'label' }, { text: name, bold: true }, ...lines],
});

function titleBlock(paper: QuotationDocument): readonly Content[] {
  const { title, reference, revision, dateWords, state, jobTitle, firm, customer, place, kindWords } = paper;
  return [
    { text: title, style: 'title' },
    { text: jobTitle, margin: [0, 0, 0, 6] },
    {
      text: `${reference}, revision ${revision}, ${dateWords}. State of the job: ${state}`,
      style: 'label',
      margin: [0, 0, 0, 10],
    },
    {
      columnGap: mm(PARTY_GAP_MM),
      columns: [
        party('From', firm),
        party('For', customer),
        { width: mm(PARTY_MM), stack: [{ text: 'Where', style: 'label' }, ...place] },
      ],
      margin: [0, 0, 0, 10],
    },
    ...[paper.draft, paper.demoNote].flatMap((words) =>
      words === null ? [] : [{ text: words, style: 'warning' }],
    ),
    paragraph(kindWords),
  ];
}

const figures = (text: string): TableCell => ({ text, style: 'figures' });

function assumptions({ assumed }: QuotationDocument): readonly Content[] {
  if (assumed.length === 0) return [];
  return [
    ruledTable({
      title: { text: 'What the price takes for granted', style: 'heading' },
      heads: ['We take it that', 'If it is not so', 'Can move the price by'],
      rows: assumed.map((one) => [withOptions(one), one.otherwise, figures(one.sumWords)]),
      widthsMm: [70, 70, 34],
    }),
  ];
}

function extras({ extras: found }: QuotationDocument): readonly Content[] {
  if (found.length === 0) return [];
  return [
    ruledTable({
      title: {
        text: 'What else we saw, or can do',
        style: 'heading',
        under: 'None of this is in the price. Say so if you want any of it.',
      },
      heads: ['What', 'What can be done', 'Price with VAT'],
      rows: found.map((one) => [withOptions(one), one.remedy, figures(one.sumWords)]),
      widthsMm: [70, 70, 34],
    }),
  ];
}

function lastPages({ acceptance, cancellation, glossary }: QuotationDocument): readonly Content[] {
  return [
    ...listUnder(
      [heading('Words used here')],
      glossary.map(({ word, meaning }) => ({ text: [{ text: `${word}: `, bold: true }, meaning] })),
    ),
    form(acceptance),
    ...(cancellation === null
      ? []
      : [
          { text: '', pageBreak: 'before' as const },
          ...passage(cancellation.notice),
          form(cancellation.form),
          form(cancellation.earlyStart),
        ]),
  ];
}

function contentOf(paper: QuotationDocument, drawings: QuotationDrawings): Content[] {
  const lines = (title: string, of: QuotationDocument['included']): readonly Content[] =>
    listUnder([heading(title)], of.map(withOptions));
  return [
    ...titleBlock(paper),
    ...listUnder([heading('What you asked for')], paper.asked),
    ...priceBlock(paper),
    ...comparison(paper),
    ...paper.weighed.flatMap(passage),
    ...paper.schemes.flatMap((scheme, i) =>
      optionContent(scheme, { kind: paper.kind, drawings, isFirst: i === 0 }),
    ),
    ...lines('What is in the price', paper.included),
    ...lines('What is not in the price', paper.excluded),
    ...assumptions(paper),
    ...passage(paper.unexpected),
    ...extras(paper),
    ...passage(paper.payment),
    ...lines('Certificate, and telling building control', paper.papers),
    ...passage(paper.about),
    ...listUnder([heading('Take care')], [...paper.cautions, paper.rulesWords]),
    ...lastPages(paper),
  ];
}

const styles = {
  title: { fontSize: 26, bold: true, color: tokens.ink },
  heading: { fontSize: 14, bold: true, margin: [0, 10, 0, 4] as [number, number, number, number] },
  subheading: { fontSize: 11, bold: true, margin: [0, 6, 0, 2] as [number, number, number, number] },
  paragraph: { margin: [0, 0, 0, 5] as [number, number, number, number] },
  label: { font: 'Barlow Semi Condensed', color: tokens.inkSoft },
  head: { font: 'Barlow Semi Condensed', color: tokens.inkSoft },
  figures: { fontFeatures: ['tnum' as const] },
  warning: {
    bold: true,
    margin: [0, 2, 0, 6] as [number, number, number, number],
    decoration: 'underline' as const,
  },
};

/** The line at the foot of every page. */
function footerOf({ title, reference, revision, dateWords, draft, demoNote }: QuotationDocument) {
  return (page: number, pages: number): Content => ({
    margin: [mm(MARGIN_MM), 6, mm(MARGIN_MM), 0],
    fontSize: 8.5,
    color: tokens.inkSoft,
    columns: [
      {
        width: mm(TEXT_WIDTH_MM - PAGE_COUNT_MM),
        text: `${title} ${reference}, revision ${revision}, ${dateWords}${draft === null ? '' : ' · Draft'}${demoNote === null ? '' : ' · Demonstration'}`,
      },
      { width: mm(PAGE_COUNT_MM), text: `Page ${page} of ${pages}`, alignment: 'right' },
    ],
  });
}

function definition(paper: QuotationDocument, drawings: QuotationDrawings): TDocumentDefinitions {
  const { title, reference, firm, date, jobTitle } = paper;
  return {
    pageSize: 'A4',
    pageMargins: [mm(MARGIN_MM), mm(18), mm(MARGIN_MM), mm(18)],
    tagged: true,
    language: 'en-GB',
    displayTitle: true,
    info: {
      title: `${title} ${reference}: ${jobTitle}`,
      author: firm.name,
      // Of the paper and not of the moment: equal papers are equal files.
      creationDate: new Date(`${date}T00:00:00Z`),
    },
    defaultStyle: { font: 'Barlow', fontSize: 10, lineHeight: 1.15, color: tokens.ink },
    styles,
    footer: footerOf(paper),
    content: contentOf(paper, drawings),
  };
}

/**
 * A quotation as a PDF on A4: every word is text, drawings are vectors, both faces are embedded. Equal papers and drawings
 * give equal bytes.
 *
 * @param drawings as they were made with the paper, or were kept with it: SVG that fetches nothing.
 * @throws for a drawing that asks for a picture: the PDF writer would read it from this machine.
 */
export async function quotationPdf(
  paper: QuotationDocument,
  drawings: QuotationDrawings,
): Promise<Uint8Array> {
  for (const { svg } of [...drawings.storeys, drawings.legend])
    if (/<image\b/i.test(svg)) throw new Error('A drawing of a quotation asks for a picture from outside.');
  return new Uint8Array(await pdfmake.createPdf(definition(paper, drawings)).getBuffer());
}
