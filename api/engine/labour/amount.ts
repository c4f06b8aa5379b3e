import type { TaskId } from './known-tasks.ts';

/** A quantity of one kind of work, with the low and high ends of what is assumed. */
export interface Amount {
  readonly task: TaskId;
  readonly quantity: number;
  readonly low: number;
  readonly high: number;
  /** Ids of the points, runs, joints, boxes, units, circuits or remedies that cause it; at least one. */
  readonly causes: readonly string[];
}

/** A quantity that is certain. */
export function certain(task: TaskId, cause: string, quantity = 1): Amount {
  return { task, causes: [cause], quantity, low: quantity, high: quantity };
}

/** Work that may turn out to be needed: none as priced, so much at the high end. */
export function possible(task: TaskId, cause: string, high = 1): Amount {
  return { task, causes: [cause], quantity: 0, low: 0, high };
}
