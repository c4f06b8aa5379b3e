import type { PlateFinish } from '../connections/finish.ts';
import type { Worked } from '../connections/worked.ts';
import type { KitCounts } from './kit-counts.ts';

/**
 * The longer screw for a plate on a spacer frame, mm: the shortest bought that reaches as far as what comes with the plate and
 * the frame together; the longest where none does.
 */
export function screwForFrameMm(
  frameMm: number,
  { suppliedScrewMm, sold }: Pick<KitCounts, 'suppliedScrewMm' | 'sold'>,
): number {
  const lengths = sold.plateScrewsMm;
  return lengths.find((lengthMm) => lengthMm >= suppliedScrewMm + frameMm) ?? Math.max(...lengths);
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
