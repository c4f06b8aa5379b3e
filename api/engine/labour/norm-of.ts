import type { Norm, Norms } from '#model/library.ts';
import { remembered } from '../plan/remembered.ts';

const normsByTask = remembered(
  ({ tasks }: Norms): ReadonlyMap<string, Norm> =>
    new Map(tasks.toReversed().map((norm) => [norm.task, norm])),
);

/** The firm's norm for a task; of several the first counts. Null without one. */
export function normOf(task: string, norms: Norms): Norm | null {
  return normsByTask(norms).get(task) ?? null;
}
