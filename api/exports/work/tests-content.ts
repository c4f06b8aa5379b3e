import type { Content } from 'pdfmake/interfaces.js';
import { BAND_SAID, NOT_EXPECTED, progressSaid } from '#drawing/work/test-sheet-words.ts';
import type { TestPart, TestSheet } from '#engine/work/tests/sheet-test.ts';
import { testSheet } from '#engine/work/tests/test-sheet.ts';
import { paragraph } from '../quotation/pdf-parts.ts';
import { asFoundContent } from './as-found-content.ts';
import { byWhomContent } from './by-whom-content.ts';
import { measuredContent } from './measured-content.ts';
import { testPartContent } from './test-part-content.ts';
import type { WorkPaper, WorkPapersRequest } from './work-paper.ts';

/**
 * The test sheet of a scheme: how to connect, what is expected and must be, what was read or room to write it, in working order;
 * once something was read, the proof with measured values and expected against measured as a picture.
 */
export function testsPaper({ papers: { shown }, library }: WorkPapersRequest): WorkPaper {
  const sheet = testSheet({ worked: shown.worked, proof: shown.proof });
  const isRead = sheet.parts.some(({ tests }) => tests.some(({ reading }) => reading !== null));
  return {
    name: 'Test sheet',
    content: [
      ...conditions(sheet),
      ...asFoundContent(shown.worked),
      ...sheet.parts.flatMap(testPartContent),
      ...(isRead ? measuredContent({ scheme: shown, sheet, limits: library.limits }) : []),
      ...(sheet.parts.length === 0 ? [] : byWhomContent(shown.worked.job.testing)),
    ],
  };
}

function conditions(sheet: TestSheet): readonly Content[] {
  if (sheet.parts.length === 0)
    return [paragraph('This scheme touches no circuit: there is nothing to test.')];
  const { conductorC, isTold } = sheet;
  return [
    { text: progressSaid(sheet), bold: true, margin: [0, 8, 0, 4] },
    paragraph(
      `${BAND_SAID} Expected at ${conductorC} °C${isTold ? '' : ', since nobody said what the conductors are at: 5 K change a resistance by 2 %'}.`,
    ),
    ...(sheet.parts.some(isUnexpected) ? [paragraph(NOT_EXPECTED)] : []),
  ];
}

/** Whether a group has a test in ohms for which nothing can be expected. */
const isUnexpected = ({ tests }: TestPart): boolean =>
  tests.some(({ unit, expected }) => unit === 'Ω' && expected === null);
