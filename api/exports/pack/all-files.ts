import type { SheetName } from '#drawing/plan/sheet-layout.ts';
import type { DangerLetter } from '#engine/quotation/danger/danger-letter.ts';
import type { SearchResult } from '#engine/schemes/search/found-schemes.ts';
import { warnOfDanger } from '#engine/warn-of-danger.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { billCsv } from '../csv/bill-csv.ts';
import { labourCsv } from '../csv/labour-csv.ts';
import { dangerLetterPdf } from '../danger-letter-pdf.ts';
import { estimateFile } from '../estimate-file.ts';
import type { Papers } from '../papers.ts';
import { planFiles, planPdf } from '../plan-files.ts';
import { quotationOfJob } from '../quotation-paper.ts';
import { shoppingFiles } from '../shopping-files.ts';
import { shoppingOf } from '../shopping-of.ts';
import { recordJson } from '../work/record-json.ts';
import { recordPdf } from '../work/record-pdf.ts';
import { workPaperPdf } from '../work/work-paper.ts';
import { workPaper, workPaperFiles } from '../work/work-papers.ts';
import { workbookOf } from '../workbook.ts';

/** The letter on a dangerous condition, which only some jobs have. */
export const LETTER = 'dangerous-condition.pdf';

/** A file by its name in a folder. */
export interface OutFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** What all papers of a job are made from. */
export interface AllFilesRequest {
  readonly job: Job;
  readonly library: Library;
  readonly papers: Papers;
  /** What was searched for; null: nothing. */
  readonly found: SearchResult | null;
  /** The paper that all plans are to be on; absent: as each asks. */
  readonly sheet?: SheetName;
  /** The letter on a dangerous condition where it is worked out already, null where none is due; absent: worked out here. */
  readonly letter?: DangerLetter | null;
  /** The number of the quotation; absent: 1. */
  readonly revision?: number;
}

/** Every paper of a job and of the scheme that its papers show, each as a file of its own. */
export async function allFiles(request: AllFilesRequest): Promise<readonly OutFile[]> {
  const { job, library, papers, found, revision } = request;
  const { drawn, shown, state, result } = papers;
  const shopping = shoppingOf(papers, library, job);
  const csv = { estimate: drawn, schemeId: shown.id, library, state };
  const letter = request.letter === undefined ? warnOfDanger(job, library, result) : request.letter;
  const { text, csv: shoppingCsv } = shoppingFiles(shopping);
  return [
    { name: 'estimate.json', content: estimateFile({ job, library, papers, found }) },
    {
      name: 'bill-of-materials.xlsx',
      content: await workbookOf(drawn, shown.id, { library, state, shopping }),
    },
    { name: 'bill-of-materials.csv', content: billCsv(csv) },
    { name: 'labour.csv', content: labourCsv(csv) },
    {
      name: 'quotation.pdf',
      content: await quotationOfJob({
        job,
        library,
        estimate: result,
        ...(revision === undefined ? {} : { revision }),
      }),
    },
    { name: 'shopping.txt', content: text },
    { name: 'shopping.csv', content: shoppingCsv },
    ...(await workFiles(request)),
    { name: 'record.pdf', content: await recordPdf({ papers, library }) },
    { name: 'record.json', content: recordJson({ papers, library }) },
    ...(letter === null ? [] : [{ name: LETTER, content: await dangerLetterPdf(letter) }]),
    ...(await drawings(request)),
  ];
}

const workFiles = ({ papers, library }: AllFilesRequest): Promise<readonly OutFile[]> =>
  Promise.all(
    workPaperFiles.map(async (name) => {
      const of = { papers, library };
      return { name, content: await workPaperPdf(workPaper(name, of), of) };
    }),
  );

async function drawings({ papers, sheet }: AllFilesRequest): Promise<readonly OutFile[]> {
  const plans = planFiles(papers, sheet).filter(({ isEmpty }, i) => i === 0 || !isEmpty);
  return [
    { name: 'wiring-plan.pdf', content: await planPdf(papers, sheet) },
    ...plans.flatMap(({ name, svg, lists, dxfName, dxf }) => [
      { name, content: svg() },
      ...lists().map((list) => ({ name: list.name, content: list.svg })),
      { name: dxfName, content: dxf() },
    ]),
  ];
}
