import type { Content } from 'pdfmake/interfaces.js';
import { INSTRUMENTS, instrumentSaid, NOT_TESTED } from '#drawing/work/tested-words.ts';
import type { Testing } from '#model/site-work.ts';
import { form, heading, listUnder, paragraph, subheading } from '../quotation/pdf-parts.ts';

/**
 * With what was tested and what could not be, as far as the job has it; who tested and when are left for hand, as is all that the job has not:
 * a name and a day that a program printed would be no statement of whoever tested.
 */
export function byWhomContent({ instruments = [], notTested = '' }: Testing = {}): readonly Content[] {
  const open = [
    ...(instruments.length === 0 ? [INSTRUMENTS] : []),
    ...(notTested === '' ? [NOT_TESTED] : []),
  ];
  const said = notTested.split('\n').filter((line) => line.trim() !== '');
  return [
    ...listUnder([heading(INSTRUMENTS)], instruments.map(instrumentSaid)),
    ...(said.length === 0 ? [] : [subheading(NOT_TESTED), ...said.map(paragraph)]),
    form({
      heading: 'Who tested',
      intro: [
        'A record of readings, and no certificate: that is for a competent person to fill in and sign.',
      ],
      lines: ['Tested by', 'Day', ...open].map((label) => ({ label, value: '' })),
    }),
  ];
}
