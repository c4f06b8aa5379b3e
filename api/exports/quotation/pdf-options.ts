import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { tokens } from '#drawing/ink.ts';
import type { QuotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import type { FeltInRoom, QuotationDocument, QuotedPrice, QuotedScheme } from '#engine/quotation/document.ts';
import { pounds } from '#engine/quotation/said.ts';
import type { SumHeads } from '#engine/quotation/sum-heads.ts';
import { vatWithin } from '#engine/quotation/vat-said.ts';
import {
  heading,
  listUnder,
  mm,
  onWhite,
  paragraph,
  ruledTable,
  subheading,
  TEXT_WIDTH_MM,
  together,
} from './pdf-parts.ts';

const right = (text: string, bold = false): TableCell => ({
  text,
  alignment: 'right',
  bold,
  style: 'figures',
});

/** Columns that have the whole of their width. */
const noPadding = { paddingLeft: () => 0, paddingRight: () => 0 } as const;

/** What the customer pays for one option, line by line down to the sum. */
function priceTable(price: QuotedPrice, heads: SumHeads): Content {
  const { parts, netPence, vatPercent, vatPence, grossPence, depositPence, balancePence, range } = price;
  const rows: readonly (readonly [string, number, boolean])[] = [
    ...parts.map(({ words, pence }) => [words, pence, false] as const),
    ...(heads.net === null ? [] : [[heads.net, netPence, false] as const]),
    ...(vatPercent > 0 ? [[`VAT at ${vatPercent} %`, vatPence, false] as const] : []),
    [heads.gross, grossPence, true],
    ...(depositPence === null
      ? []
      : ([
          ['of which before the work', depositPence, false],
          ['and afterwards', balancePence, false],
        ] as const)),
  ];
  return {
    stack: [
      {
        table: {
          widths: [mm(TEXT_WIDTH_MM - 34), mm(34)],
          body: rows.map(([words, pence, bold]) => [{ text: words, bold }, right(pounds(pence), bold)]),
        },
        layout: {
          hLineWidth: (i: number) => (i === 0 ? 0 : 0.5),
          vLineWidth: () => 0,
          hLineColor: () => tokens.line,
          ...noPadding,
        },
        margin: [0, 2, 0, 2],
      },
      ...(range === null
        ? []
        : [
            paragraph(
              `What you pay may come to anything from ${pounds(range.lowPence)} to ${pounds(range.highPence)}${heads.after}.`,
            ),
          ]),
    ],
  };
}

/** Lines of a row that may not fit what is left of a page, and then not one page either. */
const LONG_ROW = 20;

const feltTable = (felt: readonly FeltInRoom[]): Content =>
  ruledTable({
    title: { text: 'Where you will notice it', style: 'subheading' },
    breaksRows: felt.some(({ words }) => words.length > LONG_ROW),
    heads: ['Room', 'What is done there'],
    rows: felt.map(({ room, words }) => [
      { text: room, bold: true },
      words.length === 1 ? (words[0] ?? '') : { ul: [...words], markerColor: tokens.inkSoft },
    ]),
    widthsMm: [38, TEXT_WIDTH_MM - 38],
  });

const GAP_MM = 4;
/** Of each of two drawings in a row. */
const DRAWING_MM = (TEXT_WIDTH_MM - GAP_MM) / 2;

/** What stands in a row: its width, mm, and what is in it. */
interface InRow {
  readonly widthMm: number;
  readonly stack: readonly Content[];
}

/** A row of drawings, or of drawings and what their signs mean; never parted. */
const drawingRow = (parts: readonly InRow[]): Content => ({
  unbreakable: true,
  margin: [0, 4, 0, 4],
  columnGap: mm(GAP_MM),
  columns: parts.map(({ widthMm, stack }) => ({ width: mm(widthMm), stack: [...stack] })),
});

type Drawing = QuotationDrawings['storeys'][number];

const drawingStack = ({ storeyName, svg, widthMm }: Drawing): readonly Content[] => [
  { text: storeyName, style: 'label' },
  { svg: onWhite(svg), width: mm(widthMm) },
];

const halfRow = (drawing: Drawing): InRow => ({ widthMm: DRAWING_MM, stack: drawingStack(drawing) });

/** What the signs in the drawings mean, in so much room. */
const legendStack = ({ legend }: QuotationDrawings, roomMm: number): readonly Content[] => [
  { text: 'What the signs in the drawing mean', style: 'label' },
  { svg: onWhite(legend.svg), width: mm(Math.min(legend.widthMm, roomMm)), margin: [0, 0, 0, 8] },
];

/** How far the legend may be made smaller beside drawings: its letters stay 2.5 mm high. */
const LEAST_LEGEND = 2.5 / 3;

/** The first drawings with what their signs mean: beside them where that has room, else under them; never parted. */
function firstRow(first: readonly Drawing[], drawings: QuotationDrawings): readonly Content[] {
  const drawnMm = first.reduce((sum, { widthMm }) => sum + widthMm + GAP_MM, 0);
  const roomMm = TEXT_WIDTH_MM - drawnMm;
  if (roomMm < drawings.legend.widthMm * LEAST_LEGEND)
    return [drawingRow(first.map(halfRow)), ...legendStack(drawings, TEXT_WIDTH_MM)];
  const own = first.map((drawing) => ({ widthMm: drawing.widthMm, stack: drawingStack(drawing) }));
  return [drawingRow([...own, { widthMm: roomMm, stack: legendStack(drawings, roomMm) }])];
}

/** The drawings under their heading, two in a row, the first row never parted from it nor from what its signs mean. */
function drawingPart(
  { schemeId }: QuotedScheme,
  drawings: QuotationDrawings,
  isFirst: boolean,
): readonly Content[] {
  const own = drawings.storeys.filter((storey) => storey.schemeId === schemeId);
  const [first, ...rest] = own.flatMap((_, i) => (i % 2 === 0 ? [own.slice(i, i + 2)] : []));
  if (first === undefined) return [];
  const opening = isFirst ? firstRow(first, drawings) : [drawingRow(first.map(halfRow))];
  return [
    together([subheading('The drawing'), ...opening]),
    ...rest.map((pair) => drawingRow(pair.map(halfRow))),
  ];
}

/** Where an option stands: in which paper, with which drawings, and whether it is the first. */
export interface OptionPlace {
  readonly heads: SumHeads;
  readonly drawings: QuotationDrawings;
  readonly isFirst: boolean;
}

/** One option: how, price, how long, where it is felt, and its drawing, with the legend beside the first. */
export function optionContent(
  scheme: QuotedScheme,
  { heads, drawings, isFirst }: OptionPlace,
): readonly Content[] {
  const { heading: name, nickname, price, withheld, how, youGet, time, felt } = scheme;
  const warning: readonly Content[] = withheld === null ? [] : [{ text: withheld, style: 'warning' }];
  return [
    ...listUnder([heading(`${name}, ${nickname}: ${pounds(price.grossPence)}`), ...warning], how),
    ...listUnder([subheading('Also done')], youGet),
    together([subheading('Price'), priceTable(price, heads), paragraph(price.vatWords)]),
    ...listUnder([subheading('How long, and the power')], time),
    ...(felt.length === 0 ? [] : [feltTable(felt)]),
    ...drawingPart(scheme, drawings, isFirst),
  ];
}

/** The options side by side. */
export function comparison({ compared, schemes }: QuotationDocument): readonly Content[] {
  if (compared.length === 0) return [];
  return [
    ruledTable({
      title: { text: 'The options side by side', style: 'heading' },
      heads: ['', ...schemes.map(({ heading: name }) => name)],
      rows: compared.map(({ what, cells }) => [{ text: what, style: 'label' }, ...cells]),
      widthsMm: [36, ...schemes.map(() => (TEXT_WIDTH_MM - 36) / schemes.length)],
    }),
  ];
}

/** The dark block of the first page: what each option comes to. */
export function priceBlock({ schemes, validWords }: QuotationDocument): readonly Content[] {
  if (schemes.length === 0) return [];
  const cell = ({ heading: name, nickname, price }: QuotedScheme): TableCell => ({
    stack: [
      { text: name, color: tokens.paper },
      { text: nickname, color: tokens.paper },
      { text: pounds(price.grossPence), fontSize: 20, bold: true, color: tokens.paper, style: 'figures' },
      {
        text: vatWithin(price),
        color: tokens.paper,
      },
      ...(price.range === null
        ? []
        : [
            {
              text: `may come to ${pounds(price.range.lowPence)} to ${pounds(price.range.highPence)}`,
              color: tokens.paper,
            },
          ]),
    ],
    margin: [8, 6, 8, 6],
  });
  return [
    {
      unbreakable: true,
      margin: [0, 8, 0, 4],
      stack: [
        {
          table: { widths: schemes.map(() => mm(TEXT_WIDTH_MM) / schemes.length), body: [schemes.map(cell)] },
          layout: { ...noPadding, fillColor: () => tokens.ink, hLineWidth: () => 0, vLineWidth: () => 0 },
        },
        { text: `${validWords}.`, style: 'paragraph', margin: [0, 4, 0, 0] },
      ],
    },
  ];
}
