import type { Content } from 'pdfmake/interfaces.js';
import { AS_FOUND_SAID, asFoundHeading, asFoundTests } from '#drawing/work/as-found-words.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { ruledTable, TEXT_WIDTH_MM } from '../quotation/pdf-parts.ts';

const HELD_MM = 46;
const READ_MM = 40;
/** A blank of a row's height to write in. */
const ROOM = ' ';

/** Room for what every circuit showed before anything was added to it, with what the survey has of it already. */
export const asFoundContent = (worked: Worked): readonly Content[] =>
  asFoundTests(worked).map(({ circuitName, rows }) =>
    ruledTable({
      title: {
        text: asFoundHeading(circuitName),
        style: 'subheading',
        under: AS_FOUND_SAID,
      },
      heads: ['Test', 'Has to be', 'Read before'],
      rows: rows.map(({ what, held, read }) => [
        { text: what, bold: true },
        held,
        read === '' ? { text: ROOM, margin: [0, 3, 0, 3] } : { text: read, style: 'figures' },
      ]),
      widthsMm: [TEXT_WIDTH_MM - HELD_MM - READ_MM, HELD_MM, READ_MM],
    }),
  );
