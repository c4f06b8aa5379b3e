import type { Terms } from '#model/job.ts';
import { plasterTasks } from './filling-tasks.ts';
import type { LabourTask } from './task.ts';

/** How long plaster takes to set, hours. Source: lets-do-diy.com, plastering materials: bonding and browning 1.5 to 2 h. */
export const PLASTER_SETS_HOURS = { least: 1.5, most: 2 } as const;

/** True where a job has plaster to wait for. */
export const hasPlaster = (labour: readonly Pick<LabourTask, 'task' | 'quantity'>[]): boolean =>
  labour.some(({ task, quantity }) => plasterTasks.has(task) && quantity > 0);

/** What plaster means for the day, in a sentence; null where there is none. */
export function dryingWords(
  { drying }: Pick<Terms, 'drying'>,
  labour: readonly Pick<LabourTask, 'task' | 'quantity'>[],
): string | null {
  if (!hasPlaster(labour)) return null;
  const hours = `${PLASTER_SETS_HOURS.least} to ${PLASTER_SETS_HOURS.most} h`;
  if (drying === 'wait')
    return `Plaster takes ${hours} to set: the day is that much longer, and no hours are charged for it.`;
  if (drying === 'second-visit')
    return `Plaster takes ${hours} to set: it is come back for, which is priced, with its travel.`;
  return `Plaster takes ${hours} to set: a second visit may be needed, and is in the high end of the range, with its travel.`;
}
