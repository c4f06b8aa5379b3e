import type { LabourTask } from './task.ts';

/** What of a house is opened, as cards and papers count it. */
export interface OpenedUp {
  /** Joists drilled or notched, or to be settled first, studs and walls drilled. */
  readonly holes: number;
  /** Floorboards lifted, traps cut and floors opened. */
  readonly boards: number;
}

const holeTasks: readonly string[] = [
  'drill-joist',
  'barred-joist',
  'notch-joist',
  'drill-stud',
  'drill-wall',
];
const boardTasks: readonly string[] = ['lift-board', 'chipboard-trap', 'open-fixed-floor'];

/** Counts what the labour of a scheme opens. */
export function openedUp(labour: readonly Pick<LabourTask, 'task' | 'quantity'>[]): OpenedUp {
  const done = (tasks: readonly string[]): number =>
    Math.round(labour.reduce((sum, { task, quantity }) => sum + (tasks.includes(task) ? quantity : 0), 0));
  return { holes: done(holeTasks), boards: done(boardTasks) };
}
