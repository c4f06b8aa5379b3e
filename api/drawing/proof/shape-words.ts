import type { Worked } from '#engine/connections/worked.ts';
import type { CircuitProof } from '#engine/proof/circuit-proof.ts';

/**
 * What a circuit's wiring amounts to, in words. Where its cables do not tell, what the survey was told stands, said to
 * be that: "ring (as told), no cable recorded"; "unknown" where nobody told either.
 */
export function shapeWords(
  { job, shapes }: Pick<Worked, 'job' | 'shapes'>,
  { circuit, shape }: Pick<CircuitProof, 'circuit' | 'shape'>,
): string {
  const claimed = shapes.get(circuit)?.claimed ?? null;
  if (shape !== 'unknown' || claimed === null) return shape.replace('-', ' ');
  const isRecorded = job.legs.some((leg) => leg.circuit === circuit);
  return `${claimed} (as told), ${isRecorded ? 'its cable not recorded in full' : 'no cable recorded'}`;
}
