import type { Norm, Norms } from '#model/library.ts';
import { remembered } from '../plan/remembered.ts';
import { fillingTasks } from './filling-tasks.ts';

const normsByTask = remembered(
  ({ tasks }: Pick<Norms, 'tasks'>): ReadonlyMap<string, Norm> =>
    new Map(tasks.toReversed().map((norm) => [norm.task, norm])),
);

/**
 * Whose norm counts where the firm has none for a task: a firm with one norm for filling has it for either way. A joist that may not be cut
 * takes as long as one that is drilled, and a board is cut as plaster is, until the firm says otherwise.
 */
const standIns: ReadonlyMap<string, string> = new Map([
  [fillingTasks['bonding-and-finish'].chase, fillingTasks['one-coat'].chase],
  [fillingTasks['bonding-and-finish'].box, fillingTasks['one-coat'].box],
  ['barred-joist', 'drill-joist'],
  ['chase-board', 'chase-plaster'],
]);

/** The task whose norm counts for another that the firm has none for; null: no norm stands in. */
export const standInFor = (task: string): string | null => standIns.get(task) ?? null;

/**
 * The firm's norm for a task; of several the first counts. Without one that of the task that stands in for it, so its
 * `task` may be another. Null where neither is there.
 */
export function normOf(task: string, norms: Pick<Norms, 'tasks'>): Norm | null {
  const known = normsByTask(norms);
  return known.get(task) ?? known.get(standInFor(task) ?? task) ?? null;
}
