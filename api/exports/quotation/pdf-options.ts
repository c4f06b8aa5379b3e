import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { tokens } from '#drawing/ink.ts';
import type { QuotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import type { FeltInRoom, QuotationDocument, QuotedPrice, QuotedScheme } from '#engine/quotation/document.ts';
import { pounds } from '#engine/quotation/said.ts';
import {
  heading,
  listUnder,
  mm,
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
function priceTable(price: QuotedPrice, kind: QuotationDocument['kind']): Content {
  const { parts, netPence, vatPercent, vatPence, grossPence, depositPence, balancePence, range } = price;
  const rows: readonly (readonly [string, number, boolean])[] = [
    ...parts.map(({ words, pence }) => [words, pence, false] as const),
    ['Price without VAT', netPence, false],
    ...(vatPercent > 0 ? [[`VAT at ${vatPercent} %`, vatPence, false] as const] : []),
    [kind === 'quotation' ? 'To pay' : 'Estimated, with VAT', grossPence, true],
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
              `What you pay may come to anything from ${pounds(range.lowPence)} to ${pounds(range.highPence)}, VAT included.`,
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

/** Lettering stands on strips of the sheet's colour, which in print is white. */
const onWhite = (svg: string): string => svg.replaceAll(tokens.sheet, '#ffffff');

/** Two drawings in a row, each with its storey's name; a row is never parted. */
function drawingRows(schemeId: string, { storeys }: QuotationDrawings): readonly Content[] {
  const own = storeys.filter((storey) => storey.schemeId === schemeId);
  const pairs = own.flatMap((_, i) => (i % 2 === 0 ? [own.slice(i, i + 2)] : []));
  if (pairs.length === 0) return [];
  return pairs.map((pair) => ({
    unbreakable: true,
    margin: [0, 4, 0, 4],
    columnGap: mm(4),
    columns: pair.map(({ storeyName, svg, widthMm }) => ({
      width: mm((TEXT_WIDTH_MM - 4) / 2),
      stack: [
        { text: storeyName, style: 'label' },
        { svg: onWhite(svg), width: mm(widthMm) },
      ],
    })),
  }));
}

/** What the signs in the drawings mean: once, with the first of them. */
const legendOf = ({ legend }: QuotationDrawings): Content => ({
  svg: onWhite(legend.svg),
  width: mm(legend.widthMm),
  margin: [0, 0, 0, 8],
});

/** The drawings under their heading, the first row and its legend never parted from it. */
function drawingPart(
  scheme: QuotedScheme,
  drawings: QuotationDrawings,
  isFirst: boolean,
): readonly Content[] {
  const [first, ...rest] = drawingRows(scheme.schemeId, drawings);
  if (first === undefined) return [];
  const legend = isFirst ? [legendOf(drawings)] : [];
  return [together([subheading('The drawing'), first, ...legend]), ...rest];
}

/** Where an option stands: in which paper, with which drawings, and whether it is the first. */
export interface OptionPlace {
  readonly kind: QuotationDocument['kind'];
  readonly drawings: QuotationDrawings;
  readonly isFirst: boolean;
}

/** One option: how, price, how long, where it is felt, and its drawing, with the legend beside the first. */
export function optionContent(
  scheme: QuotedScheme,
  { kind, drawings, isFirst }: OptionPlace,
): readonly Content[] {
  const { heading: name, nickname, price, withheld, how, youGet, time, felt } = scheme;
  const warning: readonly Content[] = withheld === null ? [] : [{ text: withheld, style: 'warning' }];
  return [
    ...listUnder([heading(`${name}, ${nickname}: ${pounds(price.grossPence)}`), ...warning], how),
    ...listUnder([subheading('Also done')], youGet),
    together([subheading('Price'), priceTable(price, kind), paragraph(price.vatWords)]),
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
        text: price.vatPercent > 0 ? `with ${pounds(price.vatPence)} VAT` : 'no VAT is charged',
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
