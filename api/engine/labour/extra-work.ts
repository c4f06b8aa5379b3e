import type { Extra } from '#model/extra.ts';
import { knownTasks } from './known-tasks.ts';
import type { LabourTask, Stage } from './task.ts';
import { minutesOf } from './task-minutes.ts';

/** What the extra work of a job is called as a task, by its id: no norm has a stroke in its name. */
export const extraTaskId = ({ id }: Pick<Extra, 'id'>): string => `${id}/work`;

/** What an extra is caused by: where it is, else itself. */
export const extraCauses = ({ id, at }: Pick<Extra, 'id' | 'at'>): readonly string[] => [at ?? id];

const stageOf = ({ task }: Extra): Stage => knownTasks.find(({ id }) => id === task)?.stage ?? 'first-fix';

/** Low, typical and high minutes of an extra; one figure counts at all three, and no end lies on the wrong side of it. */
function ownMinutes({ lowMin, typicalMin, highMin }: Extra): NonNullable<LabourTask['own']> {
  const typical = typicalMin ?? highMin ?? lowMin ?? 0;
  return {
    lowMin: Math.min(lowMin ?? typical, typical),
    typicalMin: typical,
    highMin: Math.max(highMin ?? typical, typical),
  };
}

function taskOf(extra: Extra): LabourTask {
  const own = ownMinutes(extra);
  return {
    task: extraTaskId(extra),
    description: extra.words,
    stage: stageOf(extra),
    quantity: 1,
    lowQuantity: 1,
    highQuantity: 1,
    unit: 'job',
    lowMin: minutesOf(1, own.lowMin),
    typicalMin: minutesOf(1, own.typicalMin),
    highMin: minutesOf(1, own.highMin),
    own,
    causes: extraCauses(extra),
  };
}

/** The work that is not on the drawing as tasks of its own, in the order of the job file; what takes no time is none. */
export const extraTasks = (extras: readonly Extra[] | undefined): readonly LabourTask[] =>
  (extras ?? []).map(taskOf).filter(({ highMin }) => highMin !== 0);
