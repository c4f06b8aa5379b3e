import type { Content } from 'pdfmake/interfaces.js';
import { backView } from '#drawing/work/back-view.ts';
import { connectionCard, type EndSaid } from '#drawing/work/connection-card.ts';
import { coreWords } from '#drawing/work/core-words.ts';
import { oldToNew } from '#drawing/work/old-to-new.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { ConnectionPlace } from '#engine/work/connection-place.ts';
import { connectionSheet } from '#engine/work/connection-sheet.ts';
import {
  heading,
  listUnder,
  mm,
  paragraph,
  ruledTable,
  subheading,
  TEXT_WIDTH_MM,
  together,
} from '../quotation/pdf-parts.ts';
import { picture } from './picture.ts';

const GAP_MM = 6;
/** Of what is done; the picture of its back stands beside, with what is to be looked at and how full it is below. */
const WORDS_MM = 92;

/** How every place that the scheme works on is connected, in working order, and what colours meant and mean; without a scheme, that there is nothing. */
export function connectionsContent({ worked }: SchemeEstimate): readonly Content[] {
  const sheet = connectionSheet(worked);
  const places = sheet.places.filter(({ isWorkedOn }) => isWorkedOn);
  const over: readonly Content[] = [
    heading('Where something is connected'),
    paragraph(
      'Cores are proved by test, never by colour alone. Screws are tightened as the maker of each says.',
    ),
  ];
  return [
    ...(places.length === 0 ? [...over, paragraph('This scheme connects nothing yet.')] : []),
    ...places.flatMap((place, i) => placeContent(place, i === 0 ? over : [])),
    ...listUnder([heading('Old colours and new')], oldToNew(sheet)),
  ];
}

/** With more ends than this a place may be longer than a page, and may be parted. */
const ENDS_TOGETHER = 8;

/** With more steps than this the column of them is the longer one. */
const STEPS_BESIDE = 6;

/** A place, with what stands over it and is never parted from it. */
function placeContent(place: ConnectionPlace, over: readonly Content[]): readonly Content[] {
  const { title, where, todo, sides, holds, look } = connectionCard(place);
  const head: readonly Content[] = [
    subheading(title),
    ...(where === '' ? [] : [{ text: where, style: 'label' }]),
    ...(todo.length === 0 ? [] : [{ ol: [...todo], margin: [0, 2, 0, 2] } satisfies Content]),
  ];
  const looks = look.map((words): Content => ({ text: `Look: ${words}`, bold: true }));
  const full = holds.map(
    (words, i): Content => ({ text: words, margin: [0, 0, 0, i === holds.length - 1 ? 4 : 0] }),
  );
  if (sides.length === 0) return [together([...over, ...head, ...looks, ...full])];
  // Where there is more to look at than to do, the shorter column has the rest.
  const isBusy = look.length === 0 || todo.length > STEPS_BESIDE;
  const beside = TEXT_WIDTH_MM - WORDS_MM - GAP_MM;
  const top: Content = {
    columnGap: mm(GAP_MM),
    columns: [
      { width: mm(WORDS_MM), stack: [...head, ...(isBusy ? [] : full)] },
      { width: mm(beside), stack: [picture(backView(place), beside), ...looks, ...(isBusy ? full : [])] },
    ],
  };
  const table = cableTable(sides);
  const ends = sides.reduce((sum, side) => sum + side.ends.length, 0);
  return ends <= ENDS_TOGETHER ? [together([...over, top, table])] : [together([...over, top]), table];
}

const CORE_MM = { line: 30, neutral: 36, earth: 56 } as const;

/** Every cable and lead of a place, side by side with what becomes of each core: its colour as found and after, its terminal. */
const cableTable = (
  sides: readonly { readonly title: string; readonly ends: readonly EndSaid[] }[],
): Content =>
  ruledTable({
    heads: ['Cable', 'Line', 'Neutral', 'Earth'],
    rows: sides.flatMap(({ title, ends }) =>
      ends.map((end, i) => [
        {
          stack: [
            ...(i === 0 && title !== '' ? [{ text: title, style: 'label' }] : []),
            { text: `${end.words}${end.size === '' ? '' : `, ${end.size}`}`, bold: end.isNew },
          ],
        },
        ...(['line', 'neutral', 'earth'] as const).map((core) => coreCell(end, coreWords[core])),
      ]),
    ),
    widthsMm: [
      TEXT_WIDTH_MM - CORE_MM.line - CORE_MM.neutral - CORE_MM.earth,
      CORE_MM.line,
      CORE_MM.neutral,
      CORE_MM.earth,
    ],
  });

/** "red to L"; empty where the cable, or the lead, has no such core. */
function coreCell({ conductors }: EndSaid, word: string): Content {
  const own = conductors.filter(({ core }) => core === word);
  return {
    stack: own.map(({ colour, terminal }) => ({
      text: [`${colour}${colour === '' ? '' : ' '}to `, { text: terminal, bold: true }],
    })),
  };
}
