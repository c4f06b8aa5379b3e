import type { Worked } from '../connections/worked.ts';
import { type Stretch, stretchesOf } from '../takeoff/wall-stretches.ts';
import type { Segment } from '../ways/run.ts';
import type { Amount } from './amount.ts';
import type { TaskId } from './known-tasks.ts';

/** The metres of one path, as the take-off measures it, with their low and high ends. */
function metresOf(task: TaskId, { lengthMm, lowRatio, highRatio, runIds }: Stretch): Amount {
  const quantity = lengthMm / 1000;
  return { task, quantity, low: quantity * lowRatio, high: quantity * highRatio, causes: runIds };
}

/** Work by the metre of path: cables that share a chase, a tube or a channel share the work on it. */
export function pathMetres(
  { runs, plan }: Pick<Worked, 'runs' | 'plan'>,
  task: TaskId,
  isWanted: (segment: Segment) => boolean,
): readonly Amount[] {
  return stretchesOf(runs, plan, isWanted).map((stretch) => metresOf(task, stretch));
}
