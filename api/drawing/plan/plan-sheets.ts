import type { Scene } from '../scene.ts';
import { type DrawnSheet, type PlanRequest, storeySheets } from './plan-scene.ts';

/** A numbered sheet of a set. */
export interface PlanSheet extends Omit<DrawnSheet, 'scene'> {
  readonly scene: Scene;
}

/**
 * The sheets of a scheme's plans, numbered through: storey by storey in the order given, each plan followed by the lists that have no room
 * beside it.
 */
export function planSheets(
  request: Omit<PlanRequest, 'storeyId'>,
  storeyIds: readonly string[],
): readonly PlanSheet[] {
  const sheets = storeyIds.flatMap((storeyId) => storeySheets({ ...request, storeyId }));
  return sheets.map(({ storeyId, isPlan, scene }, i) => ({
    storeyId,
    isPlan,
    scene: scene({ number: i + 1, of: sheets.length }),
  }));
}

/** How far a scheme's drawing has got: a check that is not met, or not proven, makes a draft of it. */
export const drawingStatus = (complies: 'yes' | 'no' | 'not-proven'): string =>
  ({ yes: 'For the work', no: 'Draft: a check fails', 'not-proven': 'Draft: not all proven' })[complies];
