import type { Content } from 'pdfmake/interfaces.js';
import { BAND_SAID, progressSaid } from '#drawing/work/test-sheet-words.ts';
import type { TestSheet } from '#engine/work/tests/sheet-test.ts';
import { testSheet } from '#engine/work/tests/test-sheet.ts';
import type { Library } from '#model/library.ts';
import type { Papers } from '../papers.ts';
import { paperPdf } from '../quotation/pdf-paper.ts';
import { heading, listUnder, paragraph } from '../quotation/pdf-parts.ts';
import { byWhomContent } from './by-whom-content.ts';
import { measuredContent } from './measured-content.ts';
import { testPartContent } from './test-part-content.ts';

/** What the sheet is made from. */
export interface TestsPdfRequest {
  readonly papers: Pick<Papers, 'drawn' | 'shown' | 'state' | 'demoNote'>;
  readonly library: Library;
}

/**
 * The test sheet of a scheme as a PDF on A4: how to connect, what is expected and must be, what was read or room to write it, in working order;
 * once something was read, the proof with measured values and expected against measured as a picture. Equal papers give equal bytes.
 */
export function testsPdf({ papers, library }: TestsPdfRequest): Promise<Uint8Array> {
  const { drawn, shown, state, demoNote } = papers;
  const sheet = testSheet({ worked: shown.worked, proof: shown.proof });
  const isRead = sheet.parts.some(({ tests }) => tests.some(({ reading }) => reading !== null));
  const head = `Test sheet, ${drawn.reference}, ${drawn.date}, state ${state}`;
  return paperPdf({
    title: `Test sheet, ${drawn.reference}: ${drawn.title}`,
    author: library.firm.name,
    date: drawn.date,
    footer: `${head}${demoNote === null ? '' : ' · Demonstration'}`,
    content: [
      { text: 'Test sheet', style: 'title' },
      { text: `${drawn.title}: ${shown.name}`, margin: [0, 0, 0, 4] },
      { text: `${drawn.reference}, ${drawn.date}, state ${state}. ${library.firm.name}`, style: 'label' },
      ...(demoNote === null ? [] : [{ text: demoNote, style: 'warning' }]),
      ...conditions(sheet),
      ...listUnder([heading('Take care')], [...drawn.cautions, drawn.editionNote]),
      ...sheet.parts.flatMap(testPartContent),
      ...(isRead ? measuredContent({ scheme: shown, sheet, limits: library.limits }) : []),
      ...(sheet.parts.length === 0 ? [] : byWhomContent(shown.worked.job.testing)),
    ],
  });
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
  ];
}
