import type { Content } from 'pdfmake/interfaces.js';
import {
  amountSaid,
  partWords,
  reckonedSaid,
  standingSaid,
  taskProgressSaid,
} from '#drawing/work/task-words.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { type TaskPart, taskList, type WorkTask } from '#engine/work/task-list.ts';
import { standingOf, type TaskStanding, taskProgress } from '#engine/work/task-progress.ts';
import { heading, mm, paragraph, together } from '../quotation/pdf-parts.ts';

const BOX_MM = 3.6;
const COLUMN_MM = 4;
const GAP_MM = 3;

/** How a task of the scheme stands. */
type Standing = (task: WorkTask) => TaskStanding;

/**
 * A scheme as a list to work by, in working order, with boxes to tick and the holds at which the work stops; what is ticked in the job is
 * ticked, and said.
 */
export function tasksContent(scheme: SchemeEstimate): readonly Content[] {
  const { job } = scheme.worked;
  const parts = taskList(scheme);
  const done = job.done ?? [];
  const standing: Standing = (task) => standingOf(done, scheme.id, task);
  const progress = taskProgress(parts, done, scheme.id);
  return [
    ...(done.length === 0 ? [] : [paragraph(taskProgressSaid(progress))]),
    ...parts.flatMap((part) => partContent(part, standing)),
  ];
}

function partContent({ group, tasks, reckoned }: TaskPart, standing: Standing): readonly Content[] {
  const { title, caution } = partWords[group];
  const [first, ...rest] = tasks.map((task) => taskContent(task, standing(task)));
  return [
    together([
      heading(title),
      paragraph(caution),
      ...(reckoned.length === 0 ? [] : [{ text: reckonedSaid(reckoned), style: 'label' } satisfies Content]),
      ...(first === undefined ? [] : [first]),
    ]),
    ...rest,
  ];
}

function taskContent(task: WorkTask, standing: TaskStanding): Content {
  const under = [amountSaid(task), task.marks.join(', ')].filter((words) => words !== '').join(' · ');
  const said = standingSaid(task, standing);
  const strong = (text: string): Content => ({ text, bold: true, margin: [0, 2, 0, 0] });
  return {
    unbreakable: true,
    columnGap: mm(GAP_MM),
    margin: [0, 2, 0, 3],
    columns: [
      { width: mm(COLUMN_MM), canvas: box(standing.is === 'done') },
      {
        width: '*',
        stack: [
          { text: task.words, bold: true },
          ...(under === '' ? [] : [{ text: under, style: 'label' }]),
          ...(task.hold === null ? [] : [strong(`HOLD: ${task.hold}`)]),
          ...(said === '' ? [] : [strong(said)]),
        ],
      },
    ],
  };
}

/** A box to tick, or one that is ticked. */
function box(isTicked: boolean): Extract<Content, { canvas: unknown }>['canvas'] {
  const sideMm = mm(BOX_MM);
  const stroke = (x1: number, y1: number, x2: number, y2: number) =>
    ({
      type: 'line',
      x1: sideMm * x1,
      y1: 1 + sideMm * y1,
      x2: sideMm * x2,
      y2: 1 + sideMm * y2,
      lineWidth: 1.4,
    }) as const;
  return [
    { type: 'rect', x: 0, y: 1, w: sideMm, h: sideMm, lineWidth: 0.8 },
    ...(isTicked ? [stroke(0.2, 0.5, 0.42, 0.78), stroke(0.42, 0.78, 0.85, 0.2)] : []),
  ];
}
