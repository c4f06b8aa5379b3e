import type { Content, TableCell } from 'pdfmake/interfaces.js';
import type { QuotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import type { QuotationDocument } from '#engine/quotation/document.ts';
import { sumHeads } from '#engine/quotation/sum-heads.ts';
import { comparison, optionContent, priceBlock } from './quotation/pdf-options.ts';
import { paperPdf, parties } from './quotation/pdf-paper.ts';
import {
  form,
  heading,
  listUnder,
  paragraph,
  passage,
  ruledTable,
  withOptions,
} from './quotation/pdf-parts.ts';

function titleBlock(paper: QuotationDocument): readonly Content[] {
  const { title, reference, revision, dateWords, state, jobTitle, kindWords } = paper;
  return [
    { text: title, style: 'title' },
    { text: jobTitle, margin: [0, 0, 0, 6] },
    {
      text: `${reference}, revision ${revision}, ${dateWords}. State of the job: ${state}`,
      style: 'label',
      margin: [0, 0, 0, 10],
    },
    parties(paper),
    ...[paper.draft, paper.notIssued, paper.demoNote].flatMap((words) =>
      words == null ? [] : [{ text: words, style: 'warning' }],
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

function extras(paper: QuotationDocument): readonly Content[] {
  const { extras: found } = paper;
  if (found.length === 0) return [];
  return [
    ruledTable({
      title: {
        text: 'What else we saw, or can do',
        style: 'heading',
        under: 'None of this is in the price. Say so if you want any of it.',
      },
      heads: ['What', 'What can be done', sumHeads(paper).alone],
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
      optionContent(scheme, { heads: sumHeads(paper), drawings, isFirst: i === 0 }),
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

/** The line at the foot of every page. */
/** At the foot of every page, so that a page by itself tells too whether it went out. */
function footerOf(paper: QuotationDocument): string {
  const { title, reference, revision, dateWords, draft, notIssued, demoNote } = paper;
  return [
    `${title} ${reference}, revision ${revision}, ${dateWords}`,
    ...(draft === null ? [] : ['Draft']),
    ...(notIssued === undefined ? [] : ['Not issued']),
    ...(demoNote === null ? [] : ['Demonstration']),
  ].join(' · ');
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
  const { title, reference, firm, date, jobTitle } = paper;
  return paperPdf({
    title: `${title} ${reference}: ${jobTitle}`,
    author: firm.name,
    date,
    footer: footerOf(paper),
    content: contentOf(paper, drawings),
  });
}
