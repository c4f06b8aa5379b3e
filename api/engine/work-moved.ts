import type { Job } from '#model/job.ts';
import { estimate } from './estimate.ts';
import type { PricedState } from './quotation/moved/priced-state.ts';
import { type Contract, variationStates } from './quotation/variation.ts';
import { type WorkMoved, workBetween, workSaid } from './quotation/work-said.ts';

/** The day and revision that an estimate carries are no part of what is done. */
const UNDATED = { date: '1970-01-01', revision: 1 };

function saidOf({ job, library }: PricedState, schemeId: string): readonly string[] | null {
  const [scheme] = estimate(job, library, UNDATED, { schemeIds: [schemeId], depth: 'live' }).schemes;
  return scheme === undefined ? null : workSaid(scheme, library);
}

/**
 * What of agreed work is done otherwise by a job as it is now: the front door to it, in the browser and in the server.
 *
 * @returns null where the agreed scheme is not in the job any more.
 */
export function workMoved(contract: Omit<Contract, 'contractPence'>, job: Job): WorkMoved | null {
  const states = variationStates(contract, job);
  if (states === null) return null;
  const [before, now] = [states.before, states.after].map((state) => saidOf(state, contract.schemeId));
  return before == null || now == null ? null : workBetween(before, now);
}
