import type { Job } from '#model/job.ts';
import type { Scheme } from '#model/scheme.ts';
import type { Worked } from '../../connections/worked.ts';
import { withWallsOf } from '../../plan/build-plan.ts';
import type { Run } from '../../ways/run.ts';
import { type House, sameHouse, workScheme } from '../work-scheme.ts';

/** What an answer that nobody has yet would make of a scheme as it is worked; absent: it leaves that as it is. */
export interface TurnChange {
  /** Of what was surveyed; walls may change what they are built of, and nothing where it is. */
  readonly job?: (job: Job) => Job;
  readonly scheme?: (scheme: Scheme) => Scheme;
  /** Of cables that stay where they are laid: how they lie there. */
  readonly runs?: (runs: readonly Run[], house: House) => readonly Run[];
}

/**
 * Something that nobody knows for sure and that the price hangs on: what would make the scheme cheaper, and what dearer, than it
 * is counted, in a stated order each.
 */
export interface PriceTurn {
  /** The question of the survey that settles it. */
  readonly question: string;
  readonly subjectId: string;
  readonly cheaper: readonly TurnChange[];
  readonly dearer: readonly TurnChange[];
}

function houseAs(house: House, job: Job): House {
  if (job === house.job) return house;
  const same = sameHouse(house, job);
  return job.storeys === house.job.storeys ? same : { ...same, plan: withWallsOf(same.plan, job) };
}

/**
 * A scheme as it is once all of these have turned out so, in this order. Cables stay where they are laid: what is found out on
 * the day moves no way that was decided before.
 */
export function workedAs(house: House, worked: Worked, changes: readonly TurnChange[]): Worked {
  const job = changes.reduce((one, change) => change.job?.(one) ?? one, house.job);
  const ground = houseAs(house, job);
  const { scheme } = worked;
  if (scheme === null) return workScheme(ground, null);
  const changed = changes.reduce((one, change) => change.scheme?.(one) ?? one, scheme);
  const runs = changes.reduce((laid, change) => change.runs?.(laid, ground) ?? laid, worked.runs);
  return workScheme(ground, changed, runs);
}
