import type { Opening } from '#model/building.ts';
import type { WallSpot } from '../plan/plane.ts';

/** Height of channel above the skirting. Common practice, no source. */
export const SKIRTING_MM = 80;

/** Whether cable in the wall at this height and place would be in a door, a window or a breast on this side. */
export function isOpenAt(opening: Opening, side: WallSpot['side'], heightMm: number): boolean {
  if (opening.kind === 'breast') return opening.side === undefined || opening.side === side;
  return heightMm > opening.sillMm && heightMm < opening.headMm;
}
