import type { Content } from 'pdfmake/interfaces.js';
import { insteadOf } from '#drawing/shopping/took-instead.ts';
import { jobAgainstActual } from '#engine/labour/against-actual.ts';
import { shoppingListOf } from '#engine/price/shopping/shopping-list-of.ts';
import { dayWords } from '#engine/quotation/said.ts';
import type { WorkMoved } from '#engine/quotation/work-said.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import type { Built, Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { stageWords } from '../line-notes.ts';
import { heading, listUnder, paragraph, ruledTable, TEXT_WIDTH_MM } from '../quotation/pdf-parts.ts';

/** What an account of finished work is made from. */
export interface BuiltRequest {
  readonly job: Job;
  readonly library: Library;
  readonly scheme: SchemeEstimate;
  readonly built: Built;
  /** What is done otherwise than was agreed; null where nothing agreed is known. */
  readonly moved: WorkMoved | null;
}

/** What changed between the work as it was agreed and as it was done, and what it took beside what was reckoned. */
export function builtContent(request: BuiltRequest): readonly Content[] {
  const { built, moved } = request;
  return [
    paragraph(`The work was finished on ${dayWords(built.on)}.`),
    ...(built.words === undefined ? [] : [heading('In the words of whoever did it'), paragraph(built.words)]),
    ...movedContent(moved),
    ...hoursContent(request),
    ...metresContent(request),
    ...insteadContent(request),
  ];
}

function movedContent(moved: WorkMoved | null): readonly Content[] {
  const title = heading('Against what was agreed');
  if (moved === null) return [title, paragraph('No agreed state of the job is known to set it against.')];
  if (moved.before.length + moved.now.length === 0)
    return [title, paragraph('Done as it was agreed: no sentence of the agreed work reads otherwise.')];
  return [
    title,
    ...listUnder([paragraph('As agreed, and no longer so:')], moved.before),
    ...listUnder([paragraph('As built, in its place or beside it:')], moved.now),
  ];
}

function against({ job, library, scheme: { labour, takeoff, price } }: BuiltRequest) {
  return jobAgainstActual(job, library.norms, { labour, takeoff, level: price.labourLevel });
}

const FIGURE_MM = 34;
const threeColumnsMm = [TEXT_WIDTH_MM - 2 * FIGURE_MM, FIGURE_MM, FIGURE_MM];
const hours = (minutes: number): string => `${(minutes / 60).toFixed(2)} h`;
const figure = (text: string): Content => ({ text, style: 'figures' });

function hoursContent(request: BuiltRequest): readonly Content[] {
  const taken = against(request).stages.filter(({ actualMin }) => actualMin !== null);
  if (taken.length === 0) return [];
  return [
    ruledTable({
      title: { text: 'Hours', style: 'heading' },
      heads: ['Stage', 'Reckoned', 'Taken'],
      rows: taken.map(({ stage, estimatedMin, actualMin }) => [
        stageWords[stage],
        figure(hours(estimatedMin)),
        figure(hours(actualMin ?? 0)),
      ]),
      widthsMm: threeColumnsMm,
    }),
  ];
}

function metresContent(request: BuiltRequest): readonly Content[] {
  const used = against(request).metres.filter(({ actualM }) => actualM !== null);
  if (used.length === 0) return [];
  return [
    ruledTable({
      title: { text: 'Metres', style: 'heading' },
      heads: ['What', 'Reckoned, waste in it', 'Used'],
      rows: used.map(({ description, estimatedM, actualM }) => [
        description,
        figure(`${estimatedM.toFixed(2)} m`),
        figure(`${(actualM ?? 0).toFixed(2)} m`),
      ]),
      widthsMm: threeColumnsMm,
    }),
  ];
}

function insteadContent({ job, library, scheme: { purchase } }: BuiltRequest): readonly Content[] {
  const { byKey, strays } = insteadOf(shoppingListOf(purchase, library.prices), job.actuals?.instead ?? []);
  return listUnder(
    [heading('Taken instead of what was not in stock')],
    [...byKey.values(), ...strays].map(({ words }) => words),
  );
}
