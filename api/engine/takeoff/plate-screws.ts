import type { PlateFinish } from '../connections/finish.ts';
import type { Worked } from '../connections/worked.ts';

/** Screws that come with a plate, mm long; spare ones are sold in these lengths. Common practice, from memory. */
const SUPPLIED_MM = 25;
export const PLATE_SCREWS_MM = [40, 50, 75] as const;

/** The longer screw for a plate on a spacer frame: what comes with the plate, and as much more as the frame is deep. */
export function screwForFrameMm(frameMm: number): number {
  return PLATE_SCREWS_MM.find((lengthMm) => lengthMm >= SUPPLIED_MM + frameMm) ?? PLATE_SCREWS_MM[2];
}

/**
 * The item id of a plate's longer screws: their heads are of the metal of the plate, since they are seen.
 *
 * @param id of the box behind the plate.
 */
export function plateScrewItem(worked: Worked, id: string, lengthMm: number): string {
  const finish = finishOfPlate(worked, id);
  return `screw-m3.5-${lengthMm}${finish === 'white' ? '' : `-${finish}`}`;
}

/** How the plate looks that covers a box: of a new one what is fitted, of one that stays what was found. */
function finishOfPlate({ things, plan }: Worked, id: string): PlateFinish {
  const fitted = things.accessories.find((accessory) => accessory.id === id);
  const features = fitted?.features ?? plan.pointById.get(id)?.features ?? [];
  return features.includes('metal') ? (fitted?.finish ?? 'metal') : 'white';
}
