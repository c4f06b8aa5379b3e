import { isSameData } from '#engine/plan/same-data.ts';
import { ERASED, withoutCustomer } from '#engine/quotation/erasure.ts';
import type { Job } from '#model/job.ts';

/** The own state as it goes on from what somebody else saved. */
export interface OwnOnTheirs<T> {
  /** The same object where nothing of it had to change; else its steps back are gone. */
  readonly mine: T;
  /** False where a person has to decide which of the two counts. */
  readonly isSettled: boolean;
}

/**
 * How an own state goes on from what somebody else saved meanwhile: what a stale save is answered with, wherever the state
 * comes from, the page or the device.
 *
 * @param base what both were changed from.
 */
export type OnTheirs<T> = (base: T, mine: T, theirs: T) => OwnOnTheirs<T>;

const isErased = (job: Job): boolean => job.site.customer === ERASED;

/**
 * How a job goes on. A customer who was erased there meanwhile goes here, too, whatever else is decided: out of the own
 * state, and with it out of what the device keeps. Where nothing else was changed there, the own changes are then laid on
 * it unasked; otherwise a person decides. Changes of both sides that do not touch each other would be brought together
 * here: `mine` is then what comes of both.
 */
export const jobOnTheirs: OnTheirs<Job> = (base, mine, theirs) => {
  if (!isErased(theirs) || isErased(base)) return { mine, isSettled: false };
  return { mine: withoutCustomer(mine), isSettled: isSameData(theirs, withoutCustomer(base)) };
};
