import type { Content } from 'pdfmake/interfaces.js';
import { type CutList, cutListsOf } from '#drawing/shopping/cut-lists.ts';
import { cutScene } from '#drawing/shopping/cut-scene.ts';
import { boardRows, type FloorRows, joistRows, TAPE_SAID } from '#drawing/work/floor-words.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { floorWork } from '#engine/work/floors/floor-work.ts';
import { referencesOf } from '#engine/work/references.ts';
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

/** What is cut from which length, then the joists that are cut and the floors that are opened. */
export function floorsContent(scheme: SchemeEstimate): readonly Content[] {
  const { worked } = scheme;
  const work = floorWork(worked, referencesOf(worked));
  const cuts = cutListsOf(scheme);
  const [boards, joists] = [boardRows(worked, work), joistRows(worked, work)];
  return [
    heading('Cut list'),
    ...(cuts.length === 0 ? [paragraph('Nothing is cut to length.')] : cuts.flatMap(cutContent)),
    heading('Floors that are opened'),
    ...(boards.length === 0 ? [paragraph('No floor is opened.')] : [paragraph(TAPE_SAID)]),
    ...boards.map((rows) => floorTable(rows, ['No.', 'For', 'Where', 'What', 'Floor'])),
    heading('Joists that are cut'),
    ...(joists.length === 0 ? [paragraph('No joist is cut.')] : []),
    ...joists.map((rows) => floorTable(rows, ['No.', 'For', 'Where', 'Cut', 'Bears on'])),
  ];
}

function cutContent({ description, bars, without, nearMisses }: CutList): readonly Content[] {
  const pages = bars.flatMap((_, i) => (i % BARS_A_PICTURE === 0 ? [bars.slice(i, i + BARS_A_PICTURE)] : []));
  return [
    ...pages.map((some, i) =>
      together([
        ...(i === 0 ? [subheading(description)] : []),
        picture(cutScene(some, TEXT_WIDTH_MM), TEXT_WIDTH_MM),
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

const floorTable = ({ title, rows }: FloorRows, heads: readonly string[]): Content =>
  ruledTable({
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
  });
