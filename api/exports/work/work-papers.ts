import { connectionsContent } from './connections-content.ts';
import { floorsContent } from './floors-content.ts';
import { ordersContent } from './orders-content.ts';
import { tasksContent } from './tasks-content.ts';
import { testsPaper } from './tests-content.ts';
import type { WorkPaper, WorkPapersRequest } from './work-paper.ts';

/** The papers that are worked from, by the names of their files, in the order in which they are used. */
export const workPaperFiles = [
  'tasks.pdf',
  'connections.pdf',
  'cuts-and-floors.pdf',
  'test-sheet.pdf',
] as const;
export type WorkPaperFile = (typeof workPaperFiles)[number];

/** One of the papers that are worked from. */
export function workPaper(file: WorkPaperFile, request: WorkPapersRequest): WorkPaper {
  const { shown } = request.papers;
  switch (file) {
    case 'tasks.pdf':
      return { name: 'Tasks in working order', content: tasksContent(shown) };
    case 'connections.pdf':
      return { name: 'Connections', content: [...ordersContent(shown), ...connectionsContent(shown)] };
    case 'cuts-and-floors.pdf':
      return { name: 'Cuts, floors and walls', content: floorsContent(shown) };
    case 'test-sheet.pdf':
      return testsPaper(request);
  }
}
