import { bindsAsRadial } from './binds-as.ts';
import type { CircuitShape } from './shape.ts';

/** What is opened where new points are put into a leg of a circuit: its ring, or of a radial its one cable; a ring where nothing tells. */
export function openedCircuit(
  shapes: ReadonlyMap<string, CircuitShape>,
  circuitId: string,
): 'ring' | 'radial' {
  const shape = shapes.get(circuitId);
  return shape !== undefined && bindsAsRadial(shape) ? 'radial' : 'ring';
}
