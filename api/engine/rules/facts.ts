import type { Limits } from '#model/library.ts';
import type { Worked } from '../connections/worked.ts';
import type { CableCapacity } from '../proof/cable-capacity.ts';

/** Everything a rule may read: the job worked through, capacities as installed, the firm's own limits. */
export interface Facts extends Worked {
  /** By run id for new cables, by leg id for cables found. */
  readonly capacities: ReadonlyMap<string, CableCapacity>;
  readonly limits: Limits;
  /** The edition named on every finding. */
  readonly edition: string;
}
