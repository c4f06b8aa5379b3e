import type { Terms } from '#model/job.ts';

/** What is asked for before the work: so much of the sum, or a sum. */
export type Deposit = { readonly percent: number } | { readonly pence: number };

/** The terms that a job is priced on, every one of them settled but the contingency. */
export interface AgreedTerms {
  readonly labour: Terms['labour'];
  readonly vat: Terms['vat'];
  /** What is claimed for a reduced or a zero rate; a condition of this job, never of the firm. Null: nothing. */
  readonly vatCondition: NonNullable<Terms['vatCondition']> | null;
  /** One of these two is null. With neither agreed the mark-up is nought. */
  readonly markupPercent: number | null;
  readonly marginPercent: number | null;
  /** Null: by the survey. */
  readonly contingencyPercent: number | null;
  /** A visit, there and back. */
  readonly travelMin: number;
  /** Work in a day; null: nobody has said. */
  readonly dayHours: number | null;
  readonly minimumPence: number;
  /** Days of parking; null: nobody has said, and none is charged. */
  readonly parking: NonNullable<Terms['parking']> | null;
  /** What the profit is put on; null: by what the hourly rate is. */
  readonly profitOn: NonNullable<Terms['profitOn']> | null;
  readonly callOutPence: number;
  /** Null: none is asked for. */
  readonly deposit: Deposit | null;
  /** Days that the price holds, from its date; null: nobody has said. */
  readonly validDays: number | null;
  /** Null: nobody has said; then it goes by how much is proven. */
  readonly charging: NonNullable<Terms['charging']> | null;
}

/** The mark-up or the margin that these terms give; a mark-up beats a margin given beside it. */
function profitOf(terms: Terms): Pick<AgreedTerms, 'markupPercent' | 'marginPercent'> | null {
  if (terms.markupPercent !== undefined) return { markupPercent: terms.markupPercent, marginPercent: null };
  if (terms.marginPercent !== undefined) return { markupPercent: null, marginPercent: terms.marginPercent };
  return null;
}

/** The deposit that these terms ask for; a percentage beats a sum given beside it, and nought is a word: none. */
function depositOf({ depositPercent, depositPence }: Terms): Deposit | null {
  if (depositPercent !== undefined) return { percent: depositPercent };
  return depositPence === undefined ? null : { pence: depositPence };
}

/** A firm that is not registered charges no tax, whatever rate a job names; one that is charges by the job's. */
const vatOf = (job: Terms, firm: Terms): Terms['vat'] =>
  firm.vat === 'not-registered' ? 'not-registered' : job.vat;

/** The job's terms, and where they are silent the firm's. */
export function agreedTerms(job: Terms, firm: Terms): AgreedTerms {
  return {
    labour: job.labour,
    vat: vatOf(job, firm),
    vatCondition: job.vatCondition ?? null,
    ...(profitOf(job) ?? profitOf(firm) ?? { markupPercent: 0, marginPercent: null }),
    contingencyPercent: job.contingencyPercent ?? firm.contingencyPercent ?? null,
    travelMin: job.travelMin ?? firm.travelMin ?? 0,
    dayHours: job.dayHours ?? firm.dayHours ?? null,
    profitOn: job.profitOn ?? firm.profitOn ?? null,
    callOutPence: job.callOutPence ?? firm.callOutPence ?? 0,
    deposit: depositOf(job) ?? depositOf(firm),
    minimumPence: job.minimumPence ?? firm.minimumPence ?? 0,
    parking: job.parking ?? firm.parking ?? null,
    validDays: job.validDays ?? firm.validDays ?? null,
    charging: job.charging ?? firm.charging ?? null,
  };
}
