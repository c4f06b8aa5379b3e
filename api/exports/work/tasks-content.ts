import type { Content } from 'pdfmake/interfaces.js';
import { amountSaid, partWords } from '#drawing/work/task-words.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { type TaskPart, taskList, type WorkTask } from '#engine/work/task-list.ts';
import { heading, mm, paragraph, together } from '../quotation/pdf-parts.ts';

const BOX_MM = 4;
const GAP_MM = 3;

/** A scheme as a list to work by, in working order, with boxes to tick and the holds at which the work stops. */
export const tasksContent = (scheme: SchemeEstimate): readonly Content[] =>
  taskList(scheme).flatMap(partContent);

function partContent({ group, tasks }: TaskPart): readonly Content[] {
  const { title, caution } = partWords[group];
  const [first, ...rest] = tasks;
  return [
    together([heading(title), paragraph(caution), ...(first === undefined ? [] : [taskContent(first)])]),
    ...rest.map(taskContent),
  ];
}

function taskContent(task: WorkTask): Content {
  const under = [amountSaid(task), task.marks.join(', ')].filter((words) => words !== '').join(' · ');
  return {
    unbreakable: true,
    columnGap: mm(GAP_MM),
    margin: [0, 2, 0, 3],
    columns: [
      {
        width: mm(BOX_MM),
        canvas: [{ type: 'rect', x: 0, y: 1, w: mm(3.6), h: mm(3.6), lineWidth: 0.8 }],
      },
      {
        width: '*',
        stack: [
          { text: task.words, bold: true },
          ...(under === '' ? [] : [{ text: under, style: 'label' }]),
          ...(task.hold === null
            ? []
            : [{ text: `HOLD: ${task.hold}`, bold: true, margin: [0, 2, 0, 0] } satisfies Content]),
        ],
      },
    ],
  };
}
