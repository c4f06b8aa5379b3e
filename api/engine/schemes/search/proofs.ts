import { byMess } from './aim.ts';
import type { MessProof, PenceProof } from './found-schemes.ts';
import type { Looked } from './passing.ts';
import type { Works } from './works.ts';

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
export function proofOfMess({ passing, bound }: Looked, offset: number): MessProof {
  const best = passing[0] ?? null;
  const optimal = best !== null && best.cost <= bound;
  const leastMilliPoints = Number.isFinite(bound) ? Math.max(0, Math.floor(bound / byMess.perMilliPoint)) : 0;
  const boundPoints = points((optimal ? best.works.mess : leastMilliPoints / 1000) + offset);
  if (best === null) return { optimal, boundPoints, gap: null };
  const over = points(best.works.mess + offset - boundPoints);
  return { optimal, boundPoints, gap: over === 0 ? 0 : boundPoints === 0 ? null : over / boundPoints };
}

const points = (value: number): number => Math.round(value * 1000) / 1000;
