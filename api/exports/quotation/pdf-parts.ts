import type { Content, ContentStack, ContentTable, TableCell } from 'pdfmake/interfaces.js';
import { tokens } from '#drawing/ink.ts';
import type { QuotedForm, QuotedLine, QuotedPassage } from '#engine/quotation/document.ts';
import { HEAD_OF_TABLE } from './closer.ts';
import { HALF_PAGE_PT, tableHeightPt } from './table-height.ts';

/** Points of a page to a millimetre. */
export const PT_PER_MM = 72 / 25.4;
/** Width of what is printed on an A4 page, mm. */
export const TEXT_WIDTH_MM = 174;

/** A length of the page in its own unit. */
export const mm = (lengthMm: number): number => lengthMm * PT_PER_MM;

/** A drawing as it is printed: lettering stands on strips of the sheet's colour, which in print is white. */
export const onWhite = (svg: string): string => svg.replaceAll(tokens.sheet, '#ffffff');

/** A heading of the first order, which also stands in the list of headings beside the page. */
export const heading = (text: string): Content => ({ text, style: 'heading', outline: true });

/** A smaller heading. */
export const subheading = (text: string): Content => ({ text, style: 'subheading' });

/** A paragraph. */
export const paragraph = (text: string): Content => ({ text, style: 'paragraph' });

/**
 * What stands together on a page. Only for what is surely shorter than one: what is longer would be cut off, so lists and
 * tables are kept together at their beginning alone.
 */
export const together = (content: readonly Content[]): ContentStack => ({
  unbreakable: true,
  stack: [...content],
});

/** What stands over a table that may break: never parted, and on the page on which the table begins, where parts are fitted to pages. */
export const headOfTable = (content: readonly Content[]): Content => ({
  ...together(content),
  headlineLevel: HEAD_OF_TABLE,
});

/** A heading with its paragraphs, never parted from the first. */
export function passage({ heading: title, paragraphs }: QuotedPassage): readonly Content[] {
  const [first, ...rest] = paragraphs;
  if (first === undefined) return [];
  return [together([heading(title), paragraph(first)]), ...rest.map(paragraph)];
}

/** A sentence with the options that it is of before it. */
export const withOptions = ({ words, forOptions }: QuotedLine): Content =>
  forOptions === null ? words : { text: [{ text: `${forOptions}: `, bold: true }, words] };

const list = (lines: readonly Content[]): Content => ({ ul: [...lines], markerColor: tokens.inkSoft });

/** So many sentences of a list stand together at its beginning and at its end: one alone on a page is overlooked. */
const KEPT_TOGETHER = 2;

/**
 * A list of sentences under what is over it: never parted from the first two, and the last two stand together; none: nothing
 * at all.
 */
export function listUnder(over: readonly Content[], lines: readonly Content[]): readonly Content[] {
  if (lines.length === 0) return [];
  const opening = lines.length < 2 * KEPT_TOGETHER ? lines.length : KEPT_TOGETHER;
  const closing = Math.max(opening, lines.length - KEPT_TOGETHER);
  const between = lines.slice(opening, closing);
  const last = lines.slice(closing);
  return [
    together([...over, list(lines.slice(0, opening))]),
    ...(between.length === 0 ? [] : [list(between)]),
    ...(last.length === 0 ? [] : [together([list(last)])]),
    { text: '', margin: [0, 0, 0, 3] },
  ];
}

const PADDING_PT = 6;
const LABEL_MM = 62;

const hairlines = {
  hLineWidth: (i: number) => (i === 0 ? 0 : 0.5),
  vLineWidth: () => 0,
  hLineColor: () => tokens.line,
  paddingLeft: (i: number) => (i === 0 ? 0 : PADDING_PT),
  paddingRight: () => PADDING_PT,
  paddingTop: () => 4,
  paddingBottom: () => 4,
} as const;

/** What a table with hairlines is made of. */
export interface RuledTable {
  /** A heading over it, never parted from its first row, and a sentence under that; absent: none. */
  readonly title?: {
    readonly text: string;
    readonly style: 'heading' | 'subheading';
    readonly under?: string;
  };
  /** True where a row may be longer than a page. */
  readonly breaksRows?: boolean;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly TableCell[])[];
  /** Of the columns, mm, their padding in them. Set: a column that fits itself to its words would push long ones off the page. */
  readonly widthsMm: readonly number[];
}

const titleOf = ({ text, style, under }: NonNullable<RuledTable['title']>): Content[] => [
  style === 'heading' ? heading(text) : subheading(text),
  ...(under === undefined ? [] : [paragraph(under)]),
];

const widthsOf = ({ widthsMm }: RuledTable): readonly number[] =>
  widthsMm.map((widthMm, i) => mm(widthMm) - PADDING_PT * (i === 0 ? 1 : 2));

/** Whether a table is surely no longer than half a page, and so is never parted. */
export const isWhole = (table: RuledTable): boolean => tableHeightPt(table, widthsOf(table)) <= HALF_PAGE_PT;

/** A table with hairlines between its rows: whole where it is surely no longer than half a page, else its heads come again on each. */
export function ruledTable(table: RuledTable): Content {
  const { title, breaksRows = false, heads, rows } = table;
  const whole = isWhole(table);
  const titleRow: readonly TableCell[][] =
    title === undefined
      ? []
      : [[{ stack: titleOf(title), colSpan: heads.length }, ...heads.slice(1).map(() => '')]];
  const content: ContentTable = {
    table: {
      headerRows: whole ? 0 : titleRow.length + 1,
      keepWithHeaderRows: 1,
      // A row that might be longer than a page has to break.
      dontBreakRows: !breaksRows,
      widths: [...widthsOf(table)],
      body: [...titleRow, heads.map((text) => ({ text, style: 'head' })), ...rows.map((row) => [...row])],
    },
    layout:
      titleRow.length === 0 ? hairlines : { ...hairlines, hLineWidth: (i: number) => (i < 2 ? 0 : 0.5) },
    margin: [0, 2, 0, 8],
  };
  return whole ? together([content]) : content;
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
          widths: [mm(LABEL_MM) - PADDING_PT, mm(TEXT_WIDTH_MM - LABEL_MM) - 2 * PADDING_PT],
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
