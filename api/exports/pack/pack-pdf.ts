import type { Content } from 'pdfmake/interfaces.js';
import { labelsOf } from '#drawing/label-of.ts';
import { outcomeWords } from '#drawing/marks.ts';
import type { WorkMoved } from '#engine/quotation/work-said.ts';
import { warnOfDanger } from '#engine/warn-of-danger.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { dangerLetterContent } from '../danger-letter-pdf.ts';
import type { Papers } from '../papers.ts';
import { type PlanPapers, planScenes } from '../plan-files.ts';
import { fitParts } from '../quotation/fit-parts.ts';
import { paperPdf } from '../quotation/pdf-paper.ts';
import { heading, listUnder, paragraph } from '../quotation/pdf-parts.ts';
import { recordPaper } from '../work/record-pdf.ts';
import {
  stateLine,
  underTitle,
  type WorkPaper,
  type WorkPapersRequest,
  workCautions,
} from '../work/work-paper.ts';
import { workPaper, workPaperFiles } from '../work/work-papers.ts';
import { builtContent } from './built-content.ts';

/** What a pack is made from. */
export interface PackRequest {
  readonly job: Job;
  readonly library: Library;
  readonly papers: Papers;
  /** What the work does otherwise than was agreed; null where nothing agreed is known. */
  readonly moved: WorkMoved | null;
}

/** What a pack is called. */
export const packName = ({ built }: Pick<Papers, 'built'>): string =>
  built === null ? 'Papers for the work' : 'Papers of the work as built';

/**
 * All papers that are worked from as one PDF: contents and cautions, once the work is done what changed, every paper from its own page
 * on, and the wiring plans as drawn at the end, each on its own size of sheet. Equal requests give equal bytes.
 */
export async function packPdf(request: PackRequest): Promise<Uint8Array> {
  const { library, papers } = request;
  const of: WorkPapersRequest = { papers, library };
  const name = packName(papers);
  const sheets = planScenes(papers satisfies PlanPapers);
  const { reference, title, date } = papers.drawn;
  return paperPdf({
    title: `${name}, ${reference}: ${title}`,
    author: library.firm.name,
    date,
    footer: `${name}, ${stateLine(of)}${papers.demoNote === null ? '' : ' · Demonstration'}`,
    content: await fitParts(
      [
        coverContent(request, of, sheets.length),
        letterContent(request),
        ...papersOfPack(request).map((paper) => onItsPage(paper, of)),
      ].filter((part) => part.length > 0),
    ),
    sheets,
  });
}

/** The papers of a pack in their order. */
function papersOfPack(request: PackRequest): readonly WorkPaper[] {
  const { job, library, papers, moved } = request;
  const { built, shown } = papers;
  const changed =
    built === null
      ? []
      : [{ name: 'What changed', content: builtContent({ job, library, scheme: shown, built, moved }) }];
  return [
    ...changed,
    ...workPaperFiles.map((file) => workPaper(file, { papers, library })),
    recordPaper({ papers, library }),
  ];
}

/** The letter to the customer before everything else, where what was found is dangerous. */
function letterContent({ job, library, papers }: PackRequest): readonly Content[] {
  const letter = warnOfDanger(job, library, papers.result);
  if (letter === null) return [];
  return [titleOnItsPage(letter.title), ...dangerLetterContent(letter)];
}

/** A title that begins a page and stands in the contents. */
const titleOnItsPage = (text: string): Content => ({
  text,
  style: 'title',
  tocItem: true,
  tocMargin: [0, 2, 0, 2],
  pageBreak: 'before',
});

const onItsPage = ({ name, content }: WorkPaper, of: WorkPapersRequest): readonly Content[] => [
  titleOnItsPage(name),
  ...underTitle(of),
  ...content,
];

/** What is told on the first page, the gravest first. */
const seeFirst = ['fails', 'decide', 'not-proven'] as const;

function coverContent(
  { job, papers }: PackRequest,
  of: WorkPapersRequest,
  sheets: number,
): readonly Content[] {
  const { shown } = papers;
  const place = [job.site.customer, ...job.site.address].filter((words) => words.trim() !== '');
  const labelOf = labelsOf(shown.worked);
  const open = seeFirst.flatMap((outcome) => shown.findings.filter((finding) => finding.outcome === outcome));
  return [
    // Of the pack itself: in no list of what is in it.
    { text: packName(papers), style: 'title' },
    ...underTitle(of),
    ...(place.length === 0 ? [] : [paragraph(place.join(', '))]),
    { toc: { title: { text: 'What is in it', style: 'heading' }, numberStyle: 'figures' } },
    paragraph(
      sheets === 0
        ? ''
        : `After the last page: the wiring plans, ${sheets === 1 ? 'one sheet' : `${sheets} sheets`}, true to scale when printed at 100 % on the paper that each names.`,
    ),
    ...listUnder([heading('Take care')], workCautions(of)),
    ...listUnder(
      [heading('See to it first: what fails, is to be decided or is not proven')],
      open.map(({ outcome, message, remedy, subject }) => {
        const where = labelOf(subject);
        return {
          text: [
            { text: `${outcomeWords[outcome]}${where === subject ? '' : `, ${where}`}: `, bold: true },
            `${message}${remedy === null ? '' : ` ${remedy}`}`,
          ],
        };
      }),
    ),
  ];
}
