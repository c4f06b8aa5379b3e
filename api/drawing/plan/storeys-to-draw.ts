import type { Worked } from '#engine/connections/worked.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';

/** What an empty sheet is of. */
export const NO_STOREY = 'no storey drawn yet';

/** A storey of a job, and whether there is anything to draw of it. */
export interface StoreyToDraw {
  /** Empty when the job has no storey. */
  readonly id: string;
  readonly name: string;
  /** True without walls and without placed points: its sheet says so in words. */
  readonly isEmpty: boolean;
}

/** True for a storey that has neither walls nor placed points. */
export function isEmptyStorey({ plan }: Pick<Worked, 'plan'>, storeyId: string): boolean {
  const walls = plan.storeyById.get(storeyId)?.storey.walls ?? [];
  return walls.length === 0 && ![...plan.positionOfPoint.values()].some((at) => at.storeyId === storeyId);
}

/** The storeys that a scheme’s plan can be asked for, lowest first; one empty sheet for a job without storeys. */
export function storeysToDraw({ worked }: Pick<SchemeEstimate, 'worked'>): readonly StoreyToDraw[] {
  const all = worked.plan.storeys.map(({ storey: { id, name } }) => ({
    id,
    name,
    isEmpty: isEmptyStorey(worked, id),
  }));
  return all.length > 0 ? all : [{ id: '', name: NO_STOREY, isEmpty: true }];
}
