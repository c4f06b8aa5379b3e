import { HALF_PLATE_HEIGHT_MM, halfPlateWidthMm } from './clearance.ts';
import type { PlacedAccessory } from './placed.ts';

/** Plates that cover each other by no more than a drawing's rounding count as touching, mm. */
const ROUNDING_MM = 1;

/** What counts of a plate: its kind, and where its middle is. */
export type PlacedPlate = Pick<PlacedAccessory, 'kind' | 'position'>;

/** How far the middles of two plates on one face are apart along the wall, and how far they must be; null if clear. */
export function overlapOnWall(a: PlacedPlate, b: PlacedPlate): { apartMm: number; neededMm: number } | null {
  const [one, two] = [a.position.onWall, b.position.onWall];
  if (!one || !two || one.wallId !== two.wallId || one.side !== two.side) return null;
  if (a.position.storeyId !== b.position.storeyId) return null;
  const neededMm = halfPlateWidthMm(a.kind) + halfPlateWidthMm(b.kind);
  const apartMm = Math.abs(one.alongMm - two.alongMm);
  const upMm = Math.abs(a.position.heightMm - b.position.heightMm);
  const isOver = apartMm < neededMm - ROUNDING_MM && upMm < 2 * HALF_PLATE_HEIGHT_MM - ROUNDING_MM;
  return isOver ? { apartMm, neededMm } : null;
}
