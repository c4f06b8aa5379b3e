import type { Point, PointKind } from '#model/installation.ts';
import { pointKinds } from './found-words.ts';

/** Every kind of point, likeliest next first: those found in this house, the last found first, then the others as often met. */
export function kindsInOrder(points: readonly Pick<Point, 'kind' | 'status'>[]): readonly PointKind[] {
  const found = points.filter(({ status }) => status !== 'wanted').map(({ kind }) => kind);
  return [...new Set([...found.toReversed(), ...pointKinds.map(({ value }) => value)])];
}
