import { isDemo } from '#engine/demo-marks.ts';
import type { LabourTask, Stage } from '#engine/labour/task.ts';
import { EXTRA_GROUP } from '#engine/price/extra-bill.ts';
import type { BillLine } from '#engine/price/totals.ts';
import type { LineContext } from './line-context.ts';

/** The stages of the work in words. */
export const stageWords: Readonly<Record<Stage, string>> = {
  before: 'Before',
  'first-fix': 'First fix',
  'second-fix': 'Second fix',
  test: 'Test',
  after: 'After',
};

/** What is to be known of a line of the bill beside its figures; null: nothing. */
export function billNote(
  { item, priced, quantity, group }: BillLine,
  { library }: LineContext,
): string | null {
  if (group === EXTRA_GROUP) return 'Not on the drawing: a sum given for this job';
  if (!priced) return 'Not in the price list: not in the price';
  const isDemoPrice = library.prices.items.some((price) => price.item === item && isDemo(price));
  const notes = [
    ...(quantity === 0 ? ['May turn out to be needed'] : []),
    ...(isDemoPrice ? ['Demo price'] : []),
  ];
  return notes.length === 0 ? null : notes.join('; ');
}

/** What is to be known of a task beside its figures; null: nothing. */
export function taskNote(task: LabourTask): string | null {
  if (task.own !== undefined) return 'Not on the drawing: minutes given for this job';
  if (task.typicalMin === null) return 'No norm in the library: not in the price';
  return task.quantity === 0 ? 'May turn out to be needed' : null;
}
