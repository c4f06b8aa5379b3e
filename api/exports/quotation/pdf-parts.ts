import type { Content, ContentTable, TableCell } from 'pdfmake/interfaces.js';
import { tokens } from '#drawing/ink.ts';
import type { QuotedForm, QuotedLine, QuotedPassage } from '#engine/quotation/document.ts';

/** Points of a page to a millimetre. */
export const PT_PER_MM = 72 / 25.4;
/** Width of what is printed on an A4 page, mm. */
export const TEXT_WIDTH_MM = 174;

/** A length of the page in its own unit. */
export const mm = (lengthMm: number): number => lengthMm * PT_PER_MM;

/** A heading of the first order, which also stands in the list of headings beside the page. */
export const heading = (text: string): Content => ({ text, style: 'heading', outline: true });

/** A smaller heading. */
export const subheading = (text: string): Content => ({ text, style: 'subheading' });

/** A paragraph. */
export const paragraph = (text: string): Content => ({ text, style: 'paragraph' });

/** A heading that is never parted from what follows it first. */
export function section(title: string, content: readonly Content[]): readonly Content[] {
  const [first, ...rest] = content;
  if (first === undefined) return [];
  return [{ stack: [heading(title), first], unbreakable: true }, ...rest];
}

/** A heading with its paragraphs. */
export const passage = ({ heading: title, paragraphs }: QuotedPassage): readonly Content[] =>
  section(title, paragraphs.map(paragraph));

/** A sentence with the options that it is of before it. */
export const withOptions = ({ words, forOptions }: QuotedLine): Content =>
  forOptions === null ? words : { text: [{ text: `${forOptions}: `, bold: true }, words] };

/** A list of sentences. */
export const bullets = (lines: readonly Content[]): Content => ({
  ul: [...lines],
  style: 'paragraph',
  markerColor: tokens.inkSoft,
});

const hairlines = {
  hLineWidth: (i: number) => (i === 0 ? 0 : 0.5),
  vLineWidth: () => 0,
  hLineColor: () => tokens.line,
  paddingLeft: (i: number) => (i === 0 ? 0 : 6),
  paddingRight: () => 6,
  paddingTop: () => 4,
  paddingBottom: () => 4,
} as const;

/** What a table with hairlines is made of. */
export interface RuledTable {
  /** A small heading over it, never parted from its first row; absent: none. */
  readonly title?: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly TableCell[])[];
  readonly widths: readonly (string | number)[];
}

/** A table with hairlines between its rows; its heads come again on each page. */
export function ruledTable({ title, heads, rows, widths }: RuledTable): ContentTable {
  const titleRow: readonly TableCell[][] =
    title === undefined
      ? []
      : [[{ text: title, style: 'subheading', colSpan: heads.length }, ...heads.slice(1).map(() => '')]];
  return {
    table: {
      headerRows: titleRow.length + 1,
      keepWithHeaderRows: 1,
      dontBreakRows: true,
      widths: [...widths],
      body: [...titleRow, heads.map((text) => ({ text, style: 'head' })), ...rows.map((row) => [...row])],
    },
    layout:
      titleRow.length === 0 ? hairlines : { ...hairlines, hLineWidth: (i: number) => (i < 2 ? 0 : 0.5) },
    margin: [0, 2, 0, 8],
  };
}

/** A form: what is known printed, what is not a line to write on; never parted. */
export function form({ heading: title, intro, lines }: QuotedForm): Content {
  return {
    unbreakable: true,
    margin: [0, 0, 0, 10],
    stack: [
      heading(title),
      ...intro.map(paragraph),
      {
        table: {
          widths: [mm(62), '*'],
          body: lines.map(({ label, value }) => [
            { text: label, style: 'label', margin: [0, 7, 0, 0] },
            { text: value === '' ? ' ' : value, margin: [0, 6, 0, 0] },
          ]),
        },
        layout: {
          ...hairlines,
          hLineWidth: (i: number) => (i === 0 ? 0 : 0.6),
          hLineColor: () => tokens.inkFaint,
        },
      },
    ],
  };
}
