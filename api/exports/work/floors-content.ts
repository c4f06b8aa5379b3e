import type { Content } from 'pdfmake/interfaces.js';
import type { CutList } from '#drawing/shopping/cut-lists.ts';
import { cutScene } from '#drawing/shopping/cut-scene.ts';
import { DRILLED_SAID, drilledWallRows } from '#drawing/work/drilled-wall-words.ts';
import { boardRows, type FloorRows, joistRows, TAPE_SAID } from '#drawing/work/floor-words.ts';
import { CUTS_SAID, markedCuts } from '#drawing/work/marked-cuts.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { floorPlaces } from '#engine/work/floors/floor-places.ts';
import {
  heading,
  listUnder,
  paragraph,
  ruledTable,
  subheading,
  TEXT_WIDTH_MM,
  together,
} from '../quotation/pdf-parts.ts';
import { picture } from './picture.ts';

/** So many lengths with their cuts are surely shorter than a page. */
const BARS_A_PICTURE = 8;

/** What is cut from which length, then the floors that are opened, the joists that are cut and the walls that are drilled. */
export function floorsContent(scheme: SchemeEstimate): readonly Content[] {
  const { worked } = scheme;
  const work = floorPlaces(worked);
  const cuts = markedCuts(scheme);
  const [boards, joists, walls] = [boardRows(worked, work), joistRows(worked, work), drilledWallRows(worked)];
  return [
    heading('Cut list'),
    paragraph(cuts.length === 0 ? 'Nothing is cut to length.' : CUTS_SAID),
    ...cuts.flatMap(cutContent),
    ...floorTables(
      [heading('Floors that are opened'), paragraph(boards.length === 0 ? 'No floor is opened.' : TAPE_SAID)],
      boards.map((rows) => floorTable(rows, ['No.', 'For', 'Where', 'What', 'Floor'])),
    ),
    ...floorTables(
      [
        heading('Joists that are cut'),
        ...(joists.length === 0
          ? [paragraph('No joist is cut.')]
          : boards.length === 0
            ? [paragraph(TAPE_SAID)]
            : []),
      ],
      joists.map((rows) => floorTable(rows, ['No.', 'For', 'Where', 'Cut', 'From its support'])),
    ),
    ...floorTables(
      [
        heading('Walls that are drilled'),
        paragraph(walls.length === 0 ? 'No wall is drilled through.' : DRILLED_SAID),
      ],
      walls.map((rows) => floorTable(rows, ['No.', 'For', 'Where', 'Hole', 'Other side'])),
    ),
  ];
}

/** Tables under what is over them, which is never parted from the first. */
function floorTables(over: readonly Content[], tables: readonly FloorTable[]): readonly Content[] {
  const [first, ...rest] = tables;
  if (first === undefined) return [together(over)];
  const opening = first.isShort ? [together([...over, first.table])] : [...over, first.table];
  return [...opening, ...rest.map(({ table }) => table)];
}

/** With more rows than this a table is longer than half a page, and parted where it has to be. */
const SHORT_ROWS = 8;

interface FloorTable {
  readonly table: Content;
  readonly isShort: boolean;
}

function cutContent({ description, bars, without, nearMisses }: CutList): readonly Content[] {
  const pages = bars.flatMap((_, i) => (i % BARS_A_PICTURE === 0 ? [bars.slice(i, i + BARS_A_PICTURE)] : []));
  return [
    ...pages.map((some, i) =>
      together([
        ...(i === 0 ? [subheading(description)] : []),
        picture(cutScene(some, TEXT_WIDTH_MM, true), TEXT_WIDTH_MM),
      ]),
    ),
    ...listUnder(pages.length === 0 ? [subheading(description)] : [], [
      ...without.map(
        ({ label, lengthMm }) =>
          `${label}, ${(lengthMm / 1000).toFixed(2)} m: nothing on the price list, nor in the van, is long enough.`,
      ),
      ...nearMisses,
    ]),
  ];
}

const COLUMNS_MM = { mark: 14, cables: 22, where: 52, what: 44 } as const;
const widthsMm = [
  ...Object.values(COLUMNS_MM),
  TEXT_WIDTH_MM - Object.values(COLUMNS_MM).reduce((sum, widthMm) => sum + widthMm, 0),
];

const floorTable = ({ title, rows }: FloorRows, heads: readonly string[]): FloorTable => ({
  isShort: rows.length <= SHORT_ROWS,
  table: ruledTable({
    title: { text: title, style: 'subheading' },
    heads,
    rows: rows.map(({ mark, cables, where, what, note }) => [
      { text: mark, bold: true },
      cables,
      { text: where, style: 'figures' },
      what,
      note,
    ]),
    widthsMm,
  }),
});
