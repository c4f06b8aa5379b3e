import type { Run } from '#engine/ways/run.ts';

/** Where a scheme that was just made is shown, to follow "is made"; null where its cables are not worked out yet. */
export function madeWords(runs: readonly Pick<Run, 'lengthMm'>[] | null): string {
  if (runs === null) return '.';
  if (runs.length === 0) return ', and joins nothing yet.';
  const drawn = runs.filter(({ lengthMm }) => lengthMm !== null).length;
  if (drawn === runs.length) return ', and shown on the plan and in the price.';
  const waiting = drawn === 0 ? 'its cables' : 'the rest of its cables';
  const where = drawn === 0 ? 'in the price' : 'in the price and in part on the plan';
  return `, and shown ${where}; ${waiting} can be drawn once the points have places.`;
}
