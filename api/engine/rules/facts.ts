import type { Limits } from '#model/library.ts';
import type { Worked } from '../connections/worked.ts';
import type { CableCapacity } from '../proof/cable-capacity.ts';
import type { CircuitProof } from '../proof/circuit-proof.ts';

/** Everything a rule may read: the job worked through, capacities as installed, the firm's own limits. */
export interface Facts extends Worked {
  /** By run id for new cable; for cable found by its edge, the leg or the part of one that stays. */
  readonly capacities: ReadonlyMap<string, CableCapacity>;
  /** By circuit: of those that the scheme touches, or all of a house as found. */
  readonly proofs: ReadonlyMap<string, CircuitProof>;
  /** Of the house as found, by circuit. */
  readonly proofsFound: ReadonlyMap<string, CircuitProof>;
  readonly limits: Limits;
  /** The edition named on every finding. */
  readonly edition: string;
}
