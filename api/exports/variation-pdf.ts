import type { Column, Content, TableCell } from 'pdfmake/interfaces.js';
import { tokens } from '#drawing/ink.ts';
import type { VariationDocument, VariedSum } from '#engine/quotation/variation-document.ts';
import { paperPdf, parties } from './quotation/pdf-paper.ts';
import {
  form,
  heading,
  listUnder,
  mm,
  paragraph,
  passage,
  TEXT_WIDTH_MM,
  together,
} from './quotation/pdf-parts.ts';

/** A photo of a variation as it is kept. */
export interface VariationPhoto {
  readonly mediaType: string;
  readonly content: Uint8Array;
}

/** The kinds of photo that the PDF writer knows. */
const printable: readonly string[] = ['image/jpeg', 'image/png'];

const SUM_MM = 34;
const PHOTO_GAP_MM = 4;
const PHOTOS_A_ROW = 4;
const PHOTO_MM = (TEXT_WIDTH_MM - (PHOTOS_A_ROW - 1) * PHOTO_GAP_MM) / PHOTOS_A_ROW;

function titleBlock(paper: VariationDocument): readonly Content[] {
  return [
    { text: paper.title, style: 'title' },
    { text: paper.jobTitle, margin: [0, 0, 0, 6] },
    { text: `${paper.reference}, ${paper.dateWords}`, style: 'label', margin: [0, 0, 0, 10] },
    parties(paper),
    ...(paper.demoNote === null ? [] : [{ text: paper.demoNote, style: 'warning' }]),
    paragraph(paper.ofWords),
    { text: paper.statusWords, bold: true, margin: [0, 0, 0, 5] },
  ];
}

const row = ({ words, sumWords, isSum }: VariedSum): TableCell[] => [
  { text: words, bold: isSum },
  { text: sumWords, bold: isSum, alignment: 'right', style: 'figures' },
];

function sumsBlock({ priceHeading, sums, vatWords, howPriced }: VariationDocument): readonly Content[] {
  return [
    {
      table: {
        headerRows: 1,
        keepWithHeaderRows: 1,
        dontBreakRows: true,
        widths: [mm(TEXT_WIDTH_MM - SUM_MM), mm(SUM_MM)],
        body: [[{ stack: [heading(priceHeading)], colSpan: 2 }, ''], ...sums.map(row)],
      },
      layout: {
        hLineWidth: (i: number) => (i < 2 ? 0 : 0.5),
        vLineWidth: () => 0,
        hLineColor: () => tokens.line,
        paddingLeft: () => 0,
        paddingRight: () => 0,
      },
      margin: [0, 2, 0, 4],
    },
    paragraph(vatWords),
    paragraph(howPriced),
  ];
}

/** One photo, small, under its number; what the writer cannot show is named, not left out. */
function photoCell({ mediaType, content }: VariationPhoto, number: number): Column {
  const width = mm(PHOTO_MM);
  const name: Content = { text: `Photo ${number}`, style: 'label' };
  if (!printable.includes(mediaType))
    return { width, stack: [name, 'Not shown here: we keep it with the job.'] };
  const image = `data:${mediaType};base64,${Buffer.from(content).toString('base64')}`;
  return { width, stack: [name, { image, fit: [width, width] }] };
}

function photoRows(
  { photosHeading }: VariationDocument,
  photos: readonly VariationPhoto[],
): readonly Content[] {
  const rows = photos
    .map((photo, i) => photoCell(photo, i + 1))
    .flatMap((_, i, cells) => (i % PHOTOS_A_ROW === 0 ? [cells.slice(i, i + PHOTOS_A_ROW)] : []))
    .map(
      (columns): Content => ({
        columnGap: mm(PHOTO_GAP_MM),
        columns,
        unbreakable: true,
        margin: [0, 2, 0, 6],
      }),
    );
  const [first, ...rest] = rows;
  return first === undefined ? [] : [together([heading(photosHeading), first]), ...rest];
}

/**
 * A variation as a PDF on A4, in the look of the quotation that it changes. Equal papers and photos give equal bytes. Where a
 * photo turns out to be broken within, none is shown, and each is named all the same: the customer is to have the paper.
 *
 * @param photos in the order of their numbers.
 */
export async function variationPdf(
  paper: VariationDocument,
  photos: readonly VariationPhoto[],
): Promise<Uint8Array> {
  try {
    return await pdfWith(paper, photos);
  } catch (error) {
    if (photos.length === 0) throw error;
    return pdfWith(
      paper,
      photos.map((photo) => ({ ...photo, mediaType: '' })),
    );
  }
}

function pdfWith(paper: VariationDocument, photos: readonly VariationPhoto[]): Promise<Uint8Array> {
  const { title, reference, dateWords, jobTitle, firm, date, demoNote } = paper;
  return paperPdf({
    title: `${title}, ${reference}: ${jobTitle}`,
    author: firm.name,
    date,
    footer: `${title}, ${reference}, ${dateWords}${demoNote === null ? '' : ' · Demonstration'}`,
    content: [
      ...titleBlock(paper),
      ...passage(paper.found),
      ...(paper.work === null ? [] : passage(paper.work)),
      ...sumsBlock(paper),
      form(paper.acceptance),
      ...photoRows(paper, photos),
      ...listUnder([heading('Take care')], paper.cautions),
    ],
  });
}
