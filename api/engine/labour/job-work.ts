import type { Terms } from '#model/job.ts';
import type { Worked } from '../connections/worked.ts';
import type { TakeoffLine } from '../takeoff/line.ts';
import { type Amount, certain, possible } from './amount.ts';
import { plasterTasks } from './filling-tasks.ts';

/** The van holds all that the take-off asks for. */
function vanSuffices(worked: Worked, takeoff: readonly TakeoffLine[]): boolean {
  const van = new Map<string, number>();
  for (const { item, quantity } of worked.job.stock) van.set(item, (van.get(item) ?? 0) + quantity);
  return takeoff.every(({ item, quantity }) => (van.get(item) ?? 0) >= quantity);
}

/** Coming back for the plaster: as the job says, else it may turn out to be needed. */
function returning({ drying }: Terms, cause: string): readonly Amount[] {
  if (drying === 'wait') return [];
  return [drying === 'second-visit' ? certain('return-visit', cause) : possible('return-visit', cause)];
}

/** What every visit takes, whatever is done on it; plaster may need a second visit. */
export function jobWork(
  worked: Worked,
  takeoff: readonly TakeoffLine[],
  work: readonly Amount[],
): readonly Amount[] {
  if (worked.scheme === null || work.length === 0) return [];
  const cause = worked.scheme.id;
  const trip: Amount = vanSuffices(worked, takeoff)
    ? possible('merchant-trip', cause)
    : { task: 'merchant-trip', causes: [cause], quantity: 1, low: 0, high: 1 };
  const plastered = work.filter(({ task }) => plasterTasks.has(task));
  return [
    certain('set-up', cause),
    trip,
    certain('clean-up', cause),
    ...(plastered.length === 0 ? [] : returning(worked.job.terms, cause)),
  ];
}
