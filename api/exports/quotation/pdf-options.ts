import type { Content, TableCell } from 'pdfmake/interfaces.js';
import { tokens } from '#drawing/ink.ts';
import type { QuotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import type { FeltInRoom, QuotationDocument, QuotedPrice, QuotedScheme } from '#engine/quotation/document.ts';
import { pounds } from '#engine/quotation/said.ts';
import {
  bullets,
  heading,
  mm,
  paragraph,
  ruledTable,
  section,
  subheading,
  TEXT_WIDTH_MM,
} from './pdf-parts.ts';

const right = (text: string, bold = false): TableCell => ({
  text,
  alignment: 'right',
  bold,
  style: 'figures',
});

/** What the customer pays for one option, line by line down to the sum. */
function priceTable({
  parts,
  netPence,
  vatPercent,
  vatPence,
  grossPence,
  depositPence,
  balancePence,
  range,
}: QuotedPrice): Content {
  const rows: readonly (readonly [string, number, boolean])[] = [
    ...parts.map(({ words, pence }) => [words, pence, false] as const),
    ['Price without VAT', netPence, false],
    ...(vatPercent > 0 ? [[`VAT at ${vatPercent} %`, vatPence, false] as const] : []),
    ['To pay', grossPence, true],
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
          widths: ['*', mm(34)],
          body: rows.map(([words, pence, bold]) => [{ text: words, bold }, right(pounds(pence), bold)]),
        },
        layout: {
          hLineWidth: (i: number) => (i === 0 ? 0 : 0.5),
          vLineWidth: () => 0,
          hLineColor: () => tokens.line,
          paddingLeft: () => 0,
          paddingRight: () => 0,
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

const feltTable = (felt: readonly FeltInRoom[]): Content =>
  ruledTable(
    ['Room', 'What is done there'],
    felt.map(({ room, words }) => [
      { text: room, bold: true },
      words.length === 1 ? (words[0] ?? '') : { ul: [...words], markerColor: tokens.inkSoft },
    ]),
    [mm(38), '*'],
  );

/** Two drawings in a row, each with its storey's name; a row is never parted. */
function drawingRows(schemeId: string, { storeys, legend }: QuotationDrawings): readonly Content[] {
  const own = storeys.filter((storey) => storey.schemeId === schemeId);
  const pairs = own.flatMap((_, i) => (i % 2 === 0 ? [own.slice(i, i + 2)] : []));
  if (pairs.length === 0) return [];
  return [
    ...pairs.map(
      (pair): Content => ({
        unbreakable: true,
        margin: [0, 4, 0, 4],
        columnGap: mm(4),
        columns: pair.map(({ storeyName, svg, widthMm }) => ({
          width: mm((TEXT_WIDTH_MM - 4) / 2),
          stack: [
            { text: storeyName, style: 'label' },
            { svg, width: mm(widthMm) },
          ],
        })),
      }),
    ),
    { svg: legend.svg, width: mm(legend.widthMm), margin: [0, 0, 0, 8] },
  ];
}

/** One option: how, price, where it is felt, how long, and its drawing. */
export function optionContent(
  scheme: QuotedScheme,
  drawings: QuotationDrawings,
  isFirst: boolean,
): readonly Content[] {
  const drawn = drawingRows(scheme.schemeId, drawings);
  return [
    {
      stack: [
        heading(`${scheme.heading}: ${pounds(scheme.price.grossPence)}`),
        ...(scheme.withheld === null ? [] : [{ text: scheme.withheld, style: 'warning' }]),
        bullets(scheme.how),
      ],
      unbreakable: true,
      ...(isFirst ? {} : { pageBreak: 'before' as const }),
    },
    ...(scheme.youGet.length === 0
      ? []
      : [{ unbreakable: true, stack: [subheading('Also done'), bullets(scheme.youGet)] }]),
    {
      unbreakable: true,
      stack: [subheading('Price'), priceTable(scheme.price), paragraph(scheme.price.vatWords)],
    },
    ...(scheme.time.length === 0
      ? []
      : [{ unbreakable: true, stack: [subheading('How long, and the power'), bullets(scheme.time)] }]),
    ...(scheme.felt.length === 0 ? [] : [subheading('Where you will notice it'), feltTable(scheme.felt)]),
    ...(drawn.length === 0
      ? []
      : [{ unbreakable: true, stack: [subheading('The drawing'), ...drawn.slice(0, 1)] }, ...drawn.slice(1)]),
  ];
}

/** The options side by side. */
export function comparison({ compared, schemes }: QuotationDocument): readonly Content[] {
  if (compared.length === 0) return [];
  return section('The options side by side', [
    ruledTable(
      ['', ...schemes.map(({ heading: name }) => name)],
      compared.map(({ what, cells }) => [{ text: what, style: 'label' }, ...cells]),
      [mm(36), ...schemes.map(() => '*')],
    ),
  ]);
}

/** The dark block of the first page: what each option comes to. */
export function priceBlock({ schemes, validWords }: QuotationDocument): readonly Content[] {
  if (schemes.length === 0) return [];
  const cell = ({ heading: name, price }: QuotedScheme): TableCell => ({
    stack: [
      { text: name, color: tokens.paper },
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
          table: { widths: schemes.map(() => '*'), body: [schemes.map(cell)] },
          layout: { fillColor: () => tokens.ink, hLineWidth: () => 0, vLineWidth: () => 0 },
        },
        { text: `${validWords}.`, style: 'paragraph', margin: [0, 4, 0, 0] },
      ],
    },
  ];
}
