import type { Vector } from './vector.ts';

/** Where a level line crosses an outline, from the left. */
function crossings(outline: readonly Vector[], y: number): readonly number[] {
  const at: number[] = [];
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    if (a[1] > y !== b[1] > y) at.push(a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]));
  });
  return at.toSorted((a, b) => a - b);
}

/** How much of two lists of stretches, each from one crossing to the next but one, is in both, mm. */
function commonMm(a: readonly number[], b: readonly number[]): number {
  let common = 0;
  for (let i = 0; i + 1 < a.length; i += 2)
    for (let j = 0; j + 1 < b.length; j += 2)
      common += Math.max(0, Math.min(a[i + 1] ?? 0, b[j + 1] ?? 0) - Math.max(a[i] ?? 0, b[j] ?? 0));
  return common;
}

/**
 * The area that two closed outlines have in common, mm²: strip by strip between their corners' levels, exact for outlines
 * of level and upright sides, near enough to refuse by for others.
 */
export function overlapMm2(a: readonly Vector[], b: readonly Vector[]): number {
  const levels = [...new Set([...a, ...b].map(([, y]) => y))].toSorted((one, other) => one - other);
  let area = 0;
  for (let i = 0; i + 1 < levels.length; i += 1) {
    const [low, high] = [levels[i] ?? 0, levels[i + 1] ?? 0];
    const middle = (low + high) / 2;
    area += (high - low) * commonMm(crossings(a, middle), crossings(b, middle));
  }
  return area;
}
