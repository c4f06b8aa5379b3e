import type { Content } from 'pdfmake/interfaces.js';
import type { DangerLetter } from '#engine/quotation/danger/danger-letter.ts';
import type { Danger } from '#engine/quotation/danger/dangers.ts';
import { paperPdf, parties } from './quotation/pdf-paper.ts';
import { form, heading, listUnder, paragraph, passage, subheading, together } from './quotation/pdf-parts.ts';

/** What the letter says under its title. */
export const dangerLetterContent = (letter: DangerLetter): readonly Content[] => [
  { text: `${letter.reference}, ${letter.dateWords}`, style: 'label', margin: [0, 0, 0, 10] },
  parties(letter),
  ...(letter.demoNote === null ? [] : [{ text: letter.demoNote, style: 'warning' }]),
  ...letter.opening.map((text, i) => ({ text, style: 'paragraph', bold: i === 0 })),
  ...letter.dangers.flatMap(dangerContent),
  ...passage(letter.about),
  form(letter.done),
  form(letter.receipt),
];

/** The letter on a dangerous condition as a PDF on A4, in the look of the firm's other papers. Equal letters give equal bytes. */
export function dangerLetterPdf(letter: DangerLetter): Promise<Uint8Array> {
  const { title, reference, jobTitle, state, date, dateWords, demoNote } = letter;
  return paperPdf({
    title: `${title}, ${reference}: ${jobTitle}`,
    author: letter.firm.name,
    date,
    footer: `${title}, ${reference}, ${dateWords}, state ${state}${demoNote === null ? '' : ' · Demonstration'}`,
    content: [{ text: title, style: 'title' }, ...dangerLetterContent(letter)],
  });
}

/** One condition: found, what it can do, what must not be done, what is to be done. A page holds it. */
const dangerContent = ({ heading: title, found, harm, mustNot, toDo }: Danger): readonly Content[] => [
  together([heading(title), paragraph(found), subheading('What it can do'), paragraph(harm)]),
  ...listUnder([subheading('What must not be done until it is put right')], mustNot),
  together([subheading('What is to be done, and by whom'), paragraph(toDo)]),
];
