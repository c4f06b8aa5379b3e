import type { Norms } from '#model/library.ts';
import type { Worked } from '../connections/worked.ts';
import type { TakeoffLine } from '../takeoff/line.ts';
import { twelveDigits } from '../takeoff/twelve-digits.ts';
import { accessoryWork } from './accessory-work.ts';
import type { Amount } from './amount.ts';
import { boardWork } from './board-work.ts';
import { boxWork } from './box-work.ts';
import { cableWork } from './cable-work.ts';
import { chaseWork } from './chase-work.ts';
import { circuitWork } from './circuit-work.ts';
import { extraTasks } from './extra-work.ts';
import { floorWork } from './floor-work.ts';
import { furnitureWork } from './furniture-work.ts';
import { jobWork } from './job-work.ts';
import { jointWork } from './joint-work.ts';
import { type KnownTask, knownTasks } from './known-tasks.ts';
import type { LabourTask } from './task.ts';
import { taskMinutes } from './task-minutes.ts';

/** Metres to the decimetre, counts as they are. */
function measured(quantity: number): number {
  return Math.round(twelveDigits(quantity * 10)) / 10;
}

function taskOf(known: KnownTask, amounts: readonly Amount[], norms: Norms): LabourTask {
  const sum = (key: 'quantity' | 'low' | 'high'): number =>
    measured(amounts.reduce((total, amount) => total + amount[key], 0));
  const quantity = sum('quantity');
  return {
    task: known.id,
    description: known.description,
    stage: known.stage,
    quantity,
    lowQuantity: sum('low'),
    highQuantity: sum('high'),
    unit: known.unit,
    ...taskMinutes(known.id, quantity, norms),
    causes: [...new Set(amounts.flatMap(({ causes }) => causes))].sort(),
  };
}

/**
 * The labour of a scheme by task, in the order of the work, each with what causes it. Minutes are for the
 * quantity as priced; the low and high quantities are for the range. Work that may turn out to be needed has
 * a quantity of nought and a high one above it. Last comes the job's own work that is not on the drawing.
 * Nothing is asked for the house as found; of a scheme that changes nothing, that work alone.
 */
export function labourTasks(
  worked: Worked,
  takeoff: readonly TakeoffLine[],
  norms: Norms,
): readonly LabourTask[] {
  if (worked.scheme === null) return [];
  const work = [
    ...circuitWork(worked),
    ...furnitureWork(worked),
    ...floorWork(worked),
    ...cableWork(worked),
    ...chaseWork(worked),
    ...boxWork(worked),
    ...jointWork(worked),
    ...accessoryWork(worked),
    ...boardWork(worked),
  ];
  const byTask = new Map<string, Amount[]>();
  for (const amount of [...work, ...jobWork(worked, takeoff, work)]) {
    const alike = byTask.get(amount.task);
    if (alike === undefined) byTask.set(amount.task, [amount]);
    else alike.push(amount);
  }
  const byNorms = knownTasks
    .flatMap((known) => {
      const amounts = byTask.get(known.id);
      return amounts === undefined ? [] : [taskOf(known, amounts, norms)];
    })
    .filter(({ highQuantity }) => highQuantity > 0);
  return [...byNorms, ...extraTasks(worked.job.extras)];
}
