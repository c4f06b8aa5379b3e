import type { DoneTask } from '#model/site-work.ts';
import type { TaskPart, WorkTask } from './task-list.ts';

/**
 * How a task stands. `stopped`: what has to be so before the work goes on is not so. `changed`: it was ticked when there was another amount of
 * it to do.
 */
export type TaskStanding =
  | { readonly is: 'open' | 'done' | 'stopped' }
  | { readonly is: 'changed'; readonly was: number; readonly now: number };

const entryOf = (schemeId: string, taskId: string): string => `${schemeId}/${taskId}`;

/** Whether a tick is of a task of a scheme. */
export const isTask = ({ entry }: DoneTask, schemeId: string, taskId: string): boolean =>
  entry === entryOf(schemeId, taskId);

/** The tick of a task as it stands now; of one that holds the work with what was found. */
export const tickOf = (
  schemeId: string,
  { id, amount, hold }: Pick<WorkTask, 'id' | 'amount' | 'hold'>,
  is: boolean,
): DoneTask => ({
  entry: entryOf(schemeId, id),
  ...(amount === null ? {} : { quantity: amount.quantity }),
  ...(hold === null ? {} : { isSo: is }),
});

/** How a task of a scheme stands by what is ticked; a hold is open until somebody has said whether it is so. */
export function standingOf(
  done: readonly DoneTask[],
  schemeId: string,
  { id, amount, hold }: Pick<WorkTask, 'id' | 'amount' | 'hold'>,
): TaskStanding {
  const tick = done.findLast((one) => isTask(one, schemeId, id));
  if (tick === undefined) return { is: 'open' };
  if (hold !== null) return tick.isSo === undefined ? { is: 'open' } : { is: tick.isSo ? 'done' : 'stopped' };
  const [was, now] = [tick.quantity, amount?.quantity];
  if (was !== undefined && now !== undefined && tenths(was) !== tenths(now))
    return { is: 'changed', was, now };
  return { is: 'done' };
}

/** Amounts are said to a tenth: what moves by less is the same. */
const tenths = (quantity: number): number => Math.round(quantity * 10);

/** How far a list of tasks has got. */
export interface TaskProgress {
  readonly done: number;
  /** Those that are sure to be needed; what only may be is counted nowhere. */
  readonly of: number;
  /** Holds at which what has to be so is not so. */
  readonly stopped: readonly WorkTask[];
  /** The first hold that nobody has answered, where something after it is ticked; null else. */
  readonly passed: WorkTask | null;
  /** The first that is neither done nor only perhaps needed; null: all are done. */
  readonly next: WorkTask | null;
}

const isSure = ({ amount }: WorkTask): boolean => amount === null || amount.quantity > 0;

/** How far the tasks of a scheme have got, in their order. */
export function taskProgress(
  parts: readonly TaskPart[],
  done: readonly DoneTask[],
  schemeId: string,
): TaskProgress {
  const tasks = parts.flatMap((part) => part.tasks);
  const standing = tasks.map((task) => standingOf(done, schemeId, task).is);
  const is = (at: number, which: TaskStanding['is']): boolean => standing[at] === which;
  const sure = tasks.filter(isSure);
  const openHold = tasks.findIndex(({ hold }, at) => hold !== null && is(at, 'open'));
  const lastDone = standing.lastIndexOf('done');
  return {
    done: tasks.filter((task, at) => isSure(task) && is(at, 'done')).length,
    of: sure.length,
    stopped: tasks.filter((_, at) => is(at, 'stopped')),
    passed: openHold >= 0 && lastDone > openHold ? (tasks[openHold] ?? null) : null,
    next: tasks.find((task, at) => isSure(task) && !is(at, 'done')) ?? null,
  };
}
