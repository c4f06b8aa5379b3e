import type { Content } from 'pdfmake/interfaces.js';
import { capital } from '#engine/quotation/said.ts';
import { cautionsOf } from '#engine/work/cautions-of.ts';
import type { Library } from '#model/library.ts';
import type { Papers } from '../papers.ts';
import { fitParts } from '../quotation/fit-parts.ts';
import { paperPdf } from '../quotation/pdf-paper.ts';
import { heading, listUnder } from '../quotation/pdf-parts.ts';

/** What the papers of the work are made from. */
export interface WorkPapersRequest {
  readonly papers: Pick<Papers, 'drawn' | 'shown' | 'status' | 'state' | 'demoNote' | 'built'>;
  readonly library: Library;
}

/** A paper of the work: what it is called, and all that is under its head. */
export interface WorkPaper {
  readonly name: string;
  readonly content: readonly Content[];
}

/** Which job, scheme and state a paper is of, in a line. */
export const stateLine = ({ papers: { drawn, status, state } }: WorkPapersRequest): string =>
  `${drawn.reference}, ${drawn.date}, state ${state}, ${status.charAt(0).toLowerCase()}${status.slice(1)}`;

/** The cautions of the work, and by which edition it was checked. */
export const workCautions = ({ papers: { drawn, shown } }: WorkPapersRequest): readonly string[] => [
  ...cautionsOf(shown.worked).map(({ words }) => words),
  drawn.editionNote,
];

/** At the foot of every page, so that a page by itself tells what it is of. */
const footerOf = (name: string, request: WorkPapersRequest): string =>
  `${name}, ${stateLine(request)}${request.papers.demoNote === null ? '' : ' · Demonstration'}`;

/** What stands under a paper's title: the job that it is of. */
export function underTitle(request: WorkPapersRequest): readonly Content[] {
  const { drawn, shown, demoNote } = request.papers;
  return [
    { text: `${drawn.title}: ${shown.name}`, margin: [0, 0, 0, 4] },
    { text: `${capital(stateLine(request))}. ${request.library.firm.name}`, style: 'label' },
    ...(demoNote === null ? [] : [{ text: demoNote, style: 'warning' }]),
  ];
}

/** A paper of the work as a PDF of its own on A4, its cautions before all else. Equal requests give equal bytes. */
export const workPaperPdf = async (
  { name, content }: WorkPaper,
  request: WorkPapersRequest,
): Promise<Uint8Array> =>
  paperPdf({
    title: `${name}, ${request.papers.drawn.reference}: ${request.papers.drawn.title}`,
    author: request.library.firm.name,
    date: request.papers.drawn.date,
    footer: footerOf(name, request),
    content: await fitParts([
      [
        { text: name, style: 'title' },
        ...underTitle(request),
        ...listUnder([heading('Take care')], workCautions(request)),
        ...content,
      ],
    ]),
  });
