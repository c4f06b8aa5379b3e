import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { CircuitOrder, OrderedCable, OrderRow } from '#engine/work/circuit-order.ts';
import { textWidthMm } from '../label-placer.ts';
import { type Ink, line, type Scene, type Shape, words } from '../scene.ts';
import { colourWords } from './core-words.ts';

const LETTERING = 2.6;
const PITCH = 9.6;
const LEFT = 4;
const INDENT = 7;
const HEAD = 4;

/** A cable in a line: "K1 · 2.26 m · new · 2.5/1.5 mm² · brown, blue". */
export function cableSaid({
  mark,
  lengthMm,
  isMeasured,
  isNew,
  lineMm2,
  cpcMm2,
  colours,
}: OrderedCable): string {
  const { line: l, neutral: n } = colours;
  const length =
    lengthMm === null
      ? 'length not known'
      : `${isNew || isMeasured ? '' : 'about '}${(lengthMm / 1000).toFixed(2)} m`;
  return [
    mark,
    length,
    ...(isNew ? ['new'] : []),
    ...(lineMm2 === null ? [] : [`${lineMm2}/${cpcMm2 ?? 0} mm²`]),
    l === null || n === null ? 'colours not told' : `${colourWords[l]}, ${colourWords[n]}`,
  ].join(' · ');
}

/** What stands at a row: its mark, and the fuse that it is behind. */
const rowSaid = ({ mark, fuse }: OrderRow): string =>
  fuse === undefined
    ? mark
    : `${mark}, behind its fuse${fuse.ratingA === null ? '' : ` of ${fuse.ratingA} A`}`;

/**
 * A circuit as a line from place to place, downwards: a ring from end A to end B, branches to the right of what they hang
 * from. New cable is thick, what is found thin, so that it is read without colour.
 */
export function orderScene({ name, rows }: CircuitOrder): Scene {
  const at = rows.map(({ depth }, i) => sheetPoint(LEFT + depth * INDENT, HEAD + i * PITCH));
  const texts = rows.flatMap((row, i) => {
    const [x] = at[i] ?? [0, 0];
    return [rowSaid(row), ...(row.by === null ? [] : [cableSaid(row.by)])].map(
      (text) => x + 4 + textWidthMm(text, LETTERING),
    );
  });
  return {
    title: `${name} in order: ${rows.map(rowSaid).join(', ')}`,
    widthMm: Math.max(30, ...texts) + 2,
    heightMm: HEAD * 2 + Math.max(0, rows.length - 1) * PITCH,
    scale: null,
    layers: [
      { name: 'lines', shapes: rows.flatMap((row, i) => leading(rows, at, i, row)) },
      { name: 'places', shapes: rows.flatMap((row, i) => place(row, at[i] ?? sheetPoint(0, 0))) },
    ],
  };
}

/** The cable or fuse that leads to a row: down from the one above on the same line, or across from what it hangs from. */
function leading(
  rows: readonly OrderRow[],
  at: readonly (readonly [number, number])[],
  i: number,
  { depth, by, fuse }: OrderRow,
): readonly Shape[] {
  const to = at[i];
  if (to === undefined || (by === null && fuse === undefined)) return [];
  const isTrunk = depth === 0 && by !== null;
  const from = rows.findLastIndex((row, j) => j < i && (isTrunk ? row.depth === 0 : row.depth === depth - 1));
  const start = at[from < 0 ? i - 1 : from];
  if (start === undefined) return [];
  const ink: Ink = by === null || by.isNew ? 'new' : 'found';
  return [line(ink, [sheetPoint(start[0], start[1]), sheetPoint(start[0], to[1]), sheetPoint(to[0], to[1])])];
}

function place(row: OrderRow, [x, y]: readonly [number, number]): readonly Shape[] {
  const { by, fuse, isNew } = row;
  const isBoard = by === null && fuse === undefined;
  const symbol: Shape = isBoard
    ? line('symbol-solid', square(x, y, 1.5), true)
    : fuse === undefined
      ? { kind: 'circle', at: sheetPoint(x, y), radiusMm: 1.3, ink: isNew ? 'symbol-new' : 'symbol' }
      : line('symbol-new', square(x, y, 1.1), true);
  return [
    symbol,
    words(isNew ? 'text-new' : 'text', sheetPoint(x + 3, y + 0.9), rowSaid(row), {
      sizeMm: LETTERING,
      strong: true,
    }),
    ...(by === null
      ? []
      : [words('text-soft', sheetPoint(x + 3, y - 3.4), cableSaid(by), { sizeMm: LETTERING })]),
  ];
}

const square = (x: number, y: number, half: number) => [
  sheetPoint(x - half, y - half),
  sheetPoint(x + half, y - half),
  sheetPoint(x + half, y + half),
  sheetPoint(x - half, y + half),
];
