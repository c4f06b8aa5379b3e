import type { FlowNetwork } from '#engine/proof/flow/flow-network.ts';
import { prepareFlow } from '#engine/proof/flow/prepare-flow.ts';
import { type FlowResult, newFlowResult, solveFlow } from '#engine/proof/flow/solve-flow.ts';
import type { LoadedNetwork } from './random-network.ts';

/** Of the largest current or volt drop of a circuit: what rounding may cost. */
export const ROUNDING = 1e-10;

/** Legs as [from, to, ohm]; node 0 is the source. */
export function networkOf(
  nodeCount: number,
  legs: readonly (readonly [number, number, number])[],
): FlowNetwork {
  return {
    nodeCount,
    source: 0,
    from: Int32Array.from(legs, ([from]) => from),
    to: Int32Array.from(legs, ([, to]) => to),
    ohm: Float64Array.from(legs, ([, , ohm]) => ohm),
  };
}

/** A flow of its own, with a leg open where one is named. */
export function solved({ network, loadA }: LoadedNetwork, openLeg?: number): FlowResult {
  const plan = prepareFlow(network, openLeg === undefined ? {} : { openLeg });
  const result = newFlowResult(plan);
  solveFlow(plan, loadA, result);
  return result;
}

/** A flow of loads by node. */
export const flowOf = (network: FlowNetwork, loadA: readonly number[]): FlowResult =>
  solved({ network, loadA: Float64Array.from(loadA) });

/** The largest of some values, whichever way it points, passing over what is no number. */
export const largest = (values: Iterable<number>): number =>
  [...values].reduce((most, value) => (Number.isNaN(value) ? most : Math.max(most, Math.abs(value))), 0);

/** The largest difference as a part of the largest value, or of a thousandth; infinite where only one is a number. */
export function difference(found: ArrayLike<number>, meant: ArrayLike<number>): number {
  const apart = Array.from(meant, (value, i) => {
    const other = found[i] ?? Number.POSITIVE_INFINITY;
    if (Number.isNaN(value) && Number.isNaN(other)) return 0;
    return Number.isNaN(value) || Number.isNaN(other) ? Number.POSITIVE_INFINITY : Math.abs(value - other);
  });
  return Math.max(0, ...apart) / Math.max(1e-3, largest(Array.from(meant)));
}
