import type { Library } from '#model/library.ts';
import type { Worked } from '../connections/worked.ts';
import { capacities } from '../proof/capacity-of-run.ts';
import { proveCircuits } from '../proof/prove.ts';
import type { Facts } from '../rules/facts.ts';

/** The proofs of circuits, by circuit. */
export type Proofs = Facts['proofs'];

/**
 * What the rules read of a worked scheme: with it what its circuits can carry and what they do.
 *
 * @param proofsFound of the house as found; null where `worked` is that house itself.
 */
export function factsOf(worked: Worked, library: Library, proofsFound: Proofs | null): Facts {
  const { limits } = library;
  const known = capacities(worked, limits);
  const proofs = new Map(
    proveCircuits({ worked, capacities: known, limits }).map((proof) => [proof.circuit, proof]),
  );
  return {
    ...worked,
    capacities: known,
    proofs,
    proofsFound: proofsFound ?? proofs,
    limits,
    edition: worked.job.edition,
  };
}

/** The same for rules that read the wiring alone: nothing is proved, and no cable's capacity worked out. */
export function factsOfWiring(worked: Worked, { limits }: Library, proofsFound: Proofs): Facts {
  const { edition } = worked.job;
  return { ...worked, capacities: new Map(), proofs: new Map(), proofsFound, limits, edition };
}
