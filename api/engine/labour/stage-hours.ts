import { twelveDigits } from '../takeoff/twelve-digits.ts';
import { knownTasks } from './known-tasks.ts';
import type { LabourTask, Stage } from './task.ts';

/** The minutes of a stage of the work at the three levels of the norms; a task without a norm has none. */
export interface StageMinutes {
  readonly stage: Stage;
  readonly lowMin: number;
  readonly typicalMin: number;
  readonly highMin: number;
}

const stages: readonly Stage[] = [...new Set(knownTasks.map(({ stage }) => stage))];

/** The minutes of each stage that has work, in the order of the work. */
export function stageMinutes(labour: readonly LabourTask[]): readonly StageMinutes[] {
  return stages.flatMap((stage) => {
    const tasks = labour.filter((task) => task.stage === stage);
    if (tasks.length === 0) return [];
    const sum = (key: 'lowMin' | 'typicalMin' | 'highMin'): number =>
      twelveDigits(tasks.reduce((all, task) => all + (task[key] ?? 0), 0));
    return [{ stage, lowMin: sum('lowMin'), typicalMin: sum('typicalMin'), highMin: sum('highMin') }];
  });
}
