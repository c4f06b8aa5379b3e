import { termNames } from '#engine/price/term-names.ts';
import type { Terms } from '#model/job.ts';
import type { JobEdit } from '../job-events.ts';

/** The terms that may be left to the firm. */
export type OwnTerm = Exclude<keyof Terms, 'labour' | 'vat' | 'multipliers' | 'parking' | TermWord>;

/** Of two terms that cannot both hold, the other one. */
const instead: Partial<Readonly<Record<OwnTerm, OwnTerm>>> = {
  markupPercent: 'marginPercent',
  marginPercent: 'markupPercent',
  depositPercent: 'depositPence',
  depositPence: 'depositPercent',
};

/** Writes a term, or (null) takes it away; of two that cannot both hold the one that is set stays. */
export function putTerm(terms: Pick<Terms, OwnTerm>, term: OwnTerm, value: number | null): void {
  const other = instead[term];
  if (value === null) delete terms[term];
  else {
    terms[term] = value;
    if (other !== undefined) delete terms[other];
  }
}

/** The terms that are one of several words and may be left out. */
type TermWord =
  | 'vatCondition'
  | 'chased'
  | 'filling'
  | 'profitOn'
  | 'drying'
  | 'furniture'
  | 'charging'
  | 'finish';

/** Writes a word, or (null) takes it away. */
export function putWord<K extends TermWord>(
  terms: Pick<Terms, TermWord>,
  term: K,
  value: Terms[K] | null | undefined,
): void {
  if (value === null || value === undefined) delete terms[term];
  else terms[term] = value;
}

/** What cables chased into walls may lie in. */
export type Chased = NonNullable<Terms['chased']>;
/** Sets how fast the job is priced to go. */
export const setLabourLevel = (labour: Terms['labour']): JobEdit => ({
  label: `Price at the ${labour} labour level`,
  change: (job) => {
    job.terms.labour = labour;
  },
});

/** Sets how the job is charged for VAT; what was claimed for another rate goes. */
export const setVat = (vat: Terms['vat']): JobEdit => ({
  label: 'Change how VAT is charged',
  change: (job) => {
    if (job.terms.vat !== vat) delete job.terms.vatCondition;
    job.terms.vat = vat;
  },
});

/** What chases may be filled with. */
export type Filling = NonNullable<Terms['filling']>;

/** Sets what chases are filled with, or leaves it to the firm (null). */
export const setFilling = (filling: Filling | null): JobEdit => ({
  label: filling === null ? 'Leave the filling of chases to the firm' : 'Change what chases are filled with',
  change: (job) => putWord(job.terms, 'filling', filling),
});

/** Says which condition is claimed for the rate; null: none. */
export const setVatCondition = (condition: Terms['vatCondition'] | null): JobEdit => ({
  label: condition === null ? 'Claim no condition of the VAT rate' : 'Claim a condition of the VAT rate',
  change: (job) => putWord(job.terms, 'vatCondition', condition),
});

/** Sets what cables chased into walls lie in, or leaves it to the firm (null). */
export const setChased = (chased: Chased | null): JobEdit => ({
  label: chased === null ? 'Leave chased cables to the firm' : 'Change what chased cables lie in',
  change: (job) => putWord(job.terms, 'chased', chased),
});

/** Sets what mark-up or margin are put on, or leaves it to the firm (null). */
export const setProfitOn = (on: Terms['profitOn'] | null): JobEdit => ({
  label:
    on === null ? 'Leave it to the firm what the mark-up is put on' : 'Change what the mark-up is put on',
  change: (job) => putWord(job.terms, 'profitOn', on),
});

/**
 * Sets one of the job's own terms, or leaves it to the firm (null). A job has a mark-up or a margin, a deposit in percent or
 * in pounds: setting one takes the other away.
 */
export const setTerm = (term: OwnTerm, value: number | null): JobEdit => ({
  label: value === null ? `Leave the ${termNames[term]} to the firm` : `Change the ${termNames[term]}`,
  change: (job) => putTerm(job.terms, term, value),
});

/** Chooses one of the norms' multipliers for this job, or leaves it out again. */
export const setMultiplier = (id: string, words: string, chosen: boolean): JobEdit => ({
  label: chosen ? `Reckon with: ${words}` : `Do not reckon with: ${words}`,
  change: (job) => {
    const others = (job.terms.multipliers ?? []).filter((one) => one !== id);
    const now = chosen ? [...others, id].sort() : others;
    if (now.length === 0) delete job.terms.multipliers;
    else job.terms.multipliers = now;
  },
});

/** Says how plaster is given its time; null: as it turns out. */
export const setDrying = (drying: Terms['drying'] | null): JobEdit => ({
  label: 'Change how plaster is given its time',
  change: (job) => putWord(job.terms, 'drying', drying),
});

/** Says who moves the furniture; null: nobody has said. */
export const setFurniture = (by: Terms['furniture'] | null): JobEdit => ({
  label: 'Change who moves the furniture',
  change: (job) => putWord(job.terms, 'furniture', by),
});

/** Says how new plates look where a point says nothing of its own; null: white moulded. */
export const setFinish = (finish: Terms['finish'] | null): JobEdit => ({
  label: 'Change the finish of new plates',
  change: (job) => putWord(job.terms, 'finish', finish),
});

/** Writes what parking is charged for, or (null) leaves it to the firm. */
export function putParking(terms: Pick<Terms, 'parking'>, parking: Terms['parking'] | null): void {
  if (parking === null || parking === undefined) delete terms.parking;
  else terms.parking = parking;
}

/** Says what parking is charged for: each day on site, so many days, none; null: as the firm does. */
export const setParking = (parking: Terms['parking'] | null): JobEdit => ({
  label: parking === null ? 'Leave parking to the firm' : 'Change what parking is charged for',
  change: (job) => putParking(job.terms, parking),
});
