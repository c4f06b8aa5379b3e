import type { Limits } from '#model/library.ts';
import type { Worked } from '../connections/worked.ts';
import type { Facts } from './facts.ts';

/** A worked scheme for rules that ask nothing of what its cables carry, before anything is proved. */
export const unprovedFacts = (worked: Worked, limits: Limits = {}): Facts => ({
  ...worked,
  capacities: new Map(),
  proofs: new Map(),
  proofsFound: new Map(),
  limits,
  edition: worked.job.edition,
});
