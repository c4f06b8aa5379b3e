import { byMess } from './aim.ts';
import type { MessProof, PenceProof } from './found-schemes.ts';
import type { Looked } from './passing.ts';
import { type Works, wholeMess } from './works.ts';

export const penceOf = ({ millipence }: Works): number => Math.round(millipence / 1000);

/**
 * How cheap the best of what was looked at by money is proved to be.
 *
 * @param offset what every scheme takes alike, thousandths of a penny.
 */
export function proofOfPence({ passing, bound }: Looked, offset: number): PenceProof {
  const best = passing[0] ?? null;
  const pence = (millipence: number): number => Math.round((millipence + offset) / 1000);
  const optimal = best !== null && best.cost <= bound;
  const open = Number.isFinite(bound) ? pence(bound) : 0;
  const boundPence = optimal ? pence(best.cost) : open;
  const gap = best === null || boundPence === 0 ? null : pence(best.cost) / boundPence - 1;
  return { optimal, boundPence, gap };
}

/**
 * How little the best of what was looked at by disturbance is proved to disturb.
 *
 * @param offset what every scheme takes alike, points.
 */
export function proofOfMess(looked: Looked, offset: number): MessProof {
  const best = looked.passing[0];
  return proofOfPoints(looked, offset, best === undefined ? null : wholeMess(best.works.mess + offset));
}

/** The same of a scheme of so many points, whatever found it; null where there is none. */
export function proofOfPoints({ passing, bound }: Looked, offset: number, points: number | null): MessProof {
  const best = passing[0];
  const isReached = best !== undefined && best.cost <= bound;
  const openMilliPoints = Number.isFinite(bound) ? Math.max(0, Math.floor(bound / byMess.perMilliPoint)) : 0;
  const proved = wholeMess((isReached ? best.works.mess : openMilliPoints / 1000) + offset);
  if (points === null) return { optimal: false, boundPoints: proved, gap: null };
  const boundPoints = Math.min(proved, points);
  const over = points - boundPoints;
  const gap = over === 0 ? 0 : boundPoints === 0 ? null : over / boundPoints;
  return { optimal: over === 0, boundPoints, gap };
}
