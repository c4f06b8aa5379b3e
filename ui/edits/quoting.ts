import type { Job, Quoting, Terms } from '#model/job.ts';
import type { JobEdit } from '../job-events.ts';
import { putWord } from './terms.ts';

/** The most schemes that a customer is offered. */
export const MOST_OFFERED = 3;

/** What is settled of the customer's paper, as a group of its own that is not there while it holds nothing. */
function settle(job: Job, change: (quoting: Quoting) => void): void {
  const quoting: Quoting = job.quoting ?? {};
  change(quoting);
  if (Object.values(quoting).every((value) => value === undefined)) delete job.quoting;
  else job.quoting = quoting;
}

/** Settles which schemes are offered, in this order; none: the cheapest that does not fail. */
export const offerSchemes = (ids: readonly string[]): JobEdit => ({
  label: 'Change what is offered',
  change: (job) =>
    settle(job, (quoting) => {
      const known = [...new Set(ids)].filter((id) => job.schemes.some((scheme) => scheme.id === id));
      if (known.length === 0) delete quoting.schemes;
      else quoting.schemes = known.slice(0, MOST_OFFERED);
    }),
});

/** Says who the customer is, or where the agreement is made; null: nobody has said. */
export const settleAgreement = <K extends 'customer' | 'agreedAt'>(
  key: K,
  value: NonNullable<Quoting[K]> | null,
): JobEdit => ({
  label: key === 'customer' ? 'Say who the customer is' : 'Say where the agreement is made',
  change: (job) =>
    settle(job, (quoting) => {
      if (value === null) delete quoting[key];
      else quoting[key] = value;
    }),
});

/** Writes when the work can begin, or whatever else is said to the customer; empty takes it away. */
export const writeToCustomer = (key: 'start' | 'remarks', words: string): JobEdit => ({
  label: key === 'start' ? 'Say when the work can begin' : 'Write to the customer',
  change: (job) =>
    settle(job, (quoting) => {
      if (words.trim() === '') delete quoting[key];
      else quoting[key] = words.trim();
    }),
});

/** Sets whether the price is held to or hours are charged; null: as the firm does, else by how much is proven. */
export const setCharging = (charging: NonNullable<Terms['charging']> | null): JobEdit => ({
  label: 'Change how the work is charged',
  change: ({ terms }) => putWord(terms, 'charging', charging),
});
