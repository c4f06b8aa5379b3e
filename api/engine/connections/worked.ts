import type { Job } from '#model/job.ts';
import type { Scheme } from '#model/scheme.ts';
import type { Network } from '../circuit/network.ts';
import type { CircuitShape } from '../circuit/shape.ts';
import type { Plan } from '../plan/plan.ts';
import type { LengthAllowances, Run } from '../ways/run.ts';
import type { WayTariff } from '../ways/way-tariff.ts';
import type { Things } from './things.ts';

/**
 * A job with one scheme worked through as far as its things: what the rules, the take-off and the drawings
 * read. With no scheme it is the house as found: `proposed` is `found`, and there are no new runs.
 */
export interface Worked {
  readonly job: Job;
  readonly scheme: Scheme | null;
  readonly plan: Plan;
  readonly found: Network;
  readonly foundShapes: ReadonlyMap<string, CircuitShape>;
  readonly proposed: Network;
  readonly shapes: ReadonlyMap<string, CircuitShape>;
  /** The likeliest paths of the legs as found, by leg id. */
  readonly foundRuns: ReadonlyMap<string, Run>;
  /** The new cables of the scheme, sorted by id. */
  readonly runs: readonly Run[];
  /** What the ways were weighed by. */
  readonly tariff: WayTariff;
  /** What cables count with beside their ways. */
  readonly allowances: LengthAllowances;
  readonly things: Things;
  /** Circuits that the scheme touches; as found: all of them. Sorted. */
  readonly circuitIds: readonly string[];
}
