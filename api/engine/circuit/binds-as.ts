import type { CircuitShape } from './shape.ts';

/**
 * Whether the rules of ring final circuits bind a circuit: it is wired as one, well or badly, or nobody has
 * told its legs and the survey says that it is one. They never bind a radial.
 */
export function bindsAsRing(shape: CircuitShape): boolean {
  if (shape.shape === 'unknown') return shape.claimed === 'ring';
  return shape.shape !== 'radial';
}

/** Whether a circuit is a radial: by its legs, or by the survey's word where nobody has told the legs. */
export function bindsAsRadial(shape: CircuitShape): boolean {
  return shape.shape === 'radial' || (shape.shape === 'unknown' && shape.claimed === 'radial');
}
