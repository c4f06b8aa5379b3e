import type { Job, Terms } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { type MoneyMoved, type MoveRequest, moneyMoved, movingMoney } from './money-moved.ts';
import { figuresOf, schemeState } from './moved/priced-state.ts';

/** Work that a customer has agreed to. */
export interface Contract {
  /** The scheme, by its id. */
  readonly schemeId: string;
  /** The job as it was quoted, and what it was priced with. */
  readonly quotedJob: Job;
  readonly library: Library;
  /** The job as it is agreed by now: as it was quoted, or as the last agreed variation has it. */
  readonly agreedJob: Job;
  /** What that comes to, VAT included. */
  readonly contractPence: number;
}

/** A change of agreed work, priced. */
export interface Variation {
  readonly beforePence: number;
  readonly afterPence: number;
  /** As for any two states; its gross pence add up to the difference. */
  readonly moved: MoneyMoved;
}

/** What of the terms tells how the work is done, and may turn out otherwise on site; all others stay as they were agreed. */
const ofTheWork = [
  'multipliers',
  'drying',
  'furniture',
  'chased',
  'filling',
] as const satisfies readonly (keyof Terms)[];

/** The terms that a variation is priced on: the quotation's, at the contingency that it came to, with the work as it is now. */
function heldTerms(quoted: Terms, now: Terms, contingencyPercent: number): Terms {
  const held: Terms = { ...quoted, contingencyPercent };
  for (const term of ofTheWork) delete held[term];
  const work = ofTheWork.filter((term) => now[term] !== undefined).map((term) => [term, now[term]]);
  return { ...held, ...Object.fromEntries(work) };
}

/**
 * The two states that a variation lies between. Both are priced as the quotation was: with its prices and norms, on its
 * terms, and at its contingency, which is not given back for what was found out, nor asked for twice. Null where one lacks the scheme.
 */
export function variationStates(contract: Omit<Contract, 'contractPence'>, job: Job): MoveRequest | null {
  const { schemeId, quotedJob, library, agreedJob } = contract;
  const quoted = schemeState({ job: quotedJob, library }, schemeId);
  if (quoted === null) return null;
  const { contingencyPercent } = figuresOf(quoted).price;
  const asQuoted = (state: Job): Job => ({
    ...state,
    terms: heldTerms(quotedJob.terms, state.terms, contingencyPercent),
  });
  return {
    schemeId,
    before: { job: asQuoted(agreedJob), library },
    after: { job: asQuoted(job), library },
  };
}

/**
 * By how much another version of the program prices the agreed job otherwise does not touch a contract: what it comes to
 * is what was agreed, and the variation is the difference on top.
 */
const variationFrom = ({ contractPence }: Contract, moved: MoneyMoved | null): Variation | null =>
  moved === null
    ? null
    : {
        beforePence: contractPence,
        afterPence: contractPence + moved.afterPence - moved.beforePence,
        moved,
      };

/**
 * Prices what has changed in a job since it was agreed, pausing after each change.
 *
 * Source: that changes are valued at the rates of the contract is common practice in building; no standard is followed.
 *
 * @returns null where the agreed scheme is not in the job any more.
 */
export function* pricingVariation(contract: Contract, job: Job): Generator<void, Variation | null> {
  const request = variationStates(contract, job);
  yield;
  return request === null ? null : variationFrom(contract, yield* movingMoney(request));
}

/** As `pricingVariation`, at one go. */
export function variationOf(contract: Contract, job: Job): Variation | null {
  const request = variationStates(contract, job);
  return request === null ? null : variationFrom(contract, moneyMoved(request));
}
