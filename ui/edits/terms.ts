import type { Terms } from '#model/job.ts';
import type { JobEdit } from '../job-events.ts';

/** The terms that may be left to the firm. */
export type OwnTerm = Exclude<keyof Terms, 'labour' | 'vat' | 'chased' | 'filling'>;

/** What cables chased into walls may lie in. */
export type Chased = NonNullable<Terms['chased']>;

/** What the terms of a job are called. */
export const termNames: Readonly<Record<keyof Terms, string>> = {
  labour: 'labour level',
  markupPercent: 'mark-up',
  marginPercent: 'margin',
  contingencyPercent: 'contingency',
  vat: 'VAT',
  travelMin: 'travel',
  minimumPence: 'minimum charge',
  validDays: 'days the price holds',
  chased: 'way that cables lie in chases',
  filling: 'filling of chases',
};

/** Sets how fast the job is priced to go. */
export const setLabourLevel = (labour: Terms['labour']): JobEdit => ({
  label: `Price at the ${labour} labour level`,
  change: (job) => {
    job.terms.labour = labour;
  },
});

/** Sets how the job is charged for VAT. */
export const setVat = (vat: Terms['vat']): JobEdit => ({
  label: 'Change how VAT is charged',
  change: (job) => {
    job.terms.vat = vat;
  },
});

/** What chases may be filled with. */
export type Filling = NonNullable<Terms['filling']>;

/** Sets what chases are filled with, or leaves it to the firm (null). */
export const setFilling = (filling: Filling | null): JobEdit => ({
  label: filling === null ? 'Leave the filling of chases to the firm' : 'Change what chases are filled with',
  change: (job) => {
    if (filling === null) delete job.terms.filling;
    else job.terms.filling = filling;
  },
});

/** Sets what cables chased into walls lie in, or leaves it to the firm (null). */
export const setChased = (chased: Chased | null): JobEdit => ({
  label: chased === null ? 'Leave chased cables to the firm' : 'Change what chased cables lie in',
  change: (job) => {
    if (chased === null) delete job.terms.chased;
    else job.terms.chased = chased;
  },
});

/**
 * Sets one of the job's own terms, or leaves it to the firm (null). A job has a mark-up or a margin: setting
 * one takes the other away.
 */
export const setTerm = (term: OwnTerm, value: number | null): JobEdit => ({
  label: value === null ? `Leave the ${termNames[term]} to the firm` : `Change the ${termNames[term]}`,
  change: (job) => {
    if (value === null) delete job.terms[term];
    else job.terms[term] = value;
    if (value !== null && term === 'markupPercent') delete job.terms.marginPercent;
    if (value !== null && term === 'marginPercent') delete job.terms.markupPercent;
  },
});
