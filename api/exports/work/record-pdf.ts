import type { Content } from 'pdfmake/interfaces.js';
import { dayWords } from '#engine/quotation/said.ts';
import type { WorkRecord } from '#engine/work/record/record-shape.ts';
import { fitParts } from '../quotation/fit-parts.ts';
import { paperPdf } from '../quotation/pdf-paper.ts';
import { heading, listUnder, paragraph } from '../quotation/pdf-parts.ts';
import { circuitContent, commentContent, fieldTable, lastContent } from './record-content.ts';
import { type RecordOfPapers, recordOf } from './record-of.ts';
import type { WorkPaper } from './work-paper.ts';

/** What stands first: that it is no certificate, which one is due, and what is in the way of a signature. */
function leadingContent({
  noCertificate,
  certificate,
  lastReadOn,
  toSettle,
}: WorkRecord): readonly Content[] {
  const last =
    lastReadOn === null
      ? 'Nothing has been read after the work yet.'
      : `The last reading after the work is of ${dayWords(lastReadOn)}.`;
  return [
    { text: noCertificate, bold: true, margin: [0, 8, 0, 4] },
    ...certificate.words.map(paragraph),
    paragraph(last),
    ...listUnder(
      [heading('Before anybody can sign')],
      toSettle.length === 0
        ? ['Nothing that this record knows of is open. What an inspection shows is not in it.']
        : toSettle,
    ),
  ];
}

const fieldsContent = (record: WorkRecord): readonly Content[] => [
  heading('The work and the installation'),
  fieldTable('The work', record.work),
  fieldTable('Supply, earthing and bonding', record.supply),
  ...record.circuits.flatMap(circuitContent),
  ...commentContent(record),
  ...lastContent(record),
];

/**
 * The record of a scheme, in an order of its own: what stands before a signature, client and work, supply, a circuit at a
 * time, comments on what was there, building control, the lines to sign. What nobody has measured or seen is room to write.
 */
export function recordPaper(request: RecordOfPapers): WorkPaper {
  const record = recordOf(request);
  return {
    name: record.certificate.title,
    content: [...leadingContent(record), ...fieldsContent(record)],
  };
}

/** The same as a PDF of its own on A4; that it is no certificate stands before all else. Equal papers give equal bytes. */
export async function recordPdf(request: RecordOfPapers): Promise<Uint8Array> {
  const record = recordOf(request);
  const { demoNote } = request.papers;
  const { certificate, reference, title, date, state, firm, scheme } = record;
  return paperPdf({
    title: `${certificate.title}, ${reference}: ${title}`,
    author: firm.name,
    date,
    footer: `${certificate.title}, no certificate, ${reference}, ${date}, state ${state}${demoNote === null ? '' : ' · Demonstration'}`,
    content: await fitParts([
      [
        { text: certificate.title, style: 'title' },
        { text: `${title}: ${scheme}`, margin: [0, 0, 0, 4] },
        { text: `${reference}, ${date}, state ${state}. ${firm.name}`, style: 'label' },
        ...(demoNote === null ? [] : [{ text: demoNote, style: 'warning' }]),
        ...leadingContent(record),
        ...listUnder([heading('Take care')], [...record.cautions, record.editionNote]),
        ...fieldsContent(record),
      ],
    ]),
  });
}
