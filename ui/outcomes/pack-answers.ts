import { packForOutcomes } from '#engine/pack-for-outcomes.ts';
import type { OutcomePacker } from '#engine/schemes/outcomes/outcome-packer.ts';
import type { TakeBackFor, TurnedOut } from '#engine/schemes/outcomes/outcome-plan.ts';
import { type Packing, packingBy } from '#engine/schemes/outcomes/packing.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';

/** What to buy for a scheme of a job as it says itself, and what goes back if things turn out so. */
export interface PackAsk {
  readonly job: Job;
  readonly library: Library;
  readonly schemeId: string;
  readonly otherIds: readonly string[];
  readonly turnedOut: TurnedOut;
}

/** What to buy, what of it goes back for each outcome, and for the one that was asked about. */
export interface PackAnswer extends Packing {
  readonly back: TakeBackFor;
}

/**
 * Answers what to buy; while only what is bought for changes, what was worked out for one question serves the next.
 *
 * @returns a function that throws for a scheme that the job does not have.
 */
export function packAnswers(): (ask: PackAsk) => PackAnswer {
  let held: { readonly key: string; readonly packer: OutcomePacker } | null = null;
  return ({ job, library, schemeId, otherIds, turnedOut }) => {
    const { packFor = [], ...facts } = job;
    const key = JSON.stringify([facts, library, schemeId, otherIds]);
    if (held?.key !== key) {
      const packer = packForOutcomes(job, library, { schemeId, otherIds });
      if (packer === null) throw new Error(`No scheme ${schemeId} to buy for.`);
      held = { key, packer };
    }
    const { packer } = held;
    return { ...packingBy(packer, packFor), back: packer.takeBack(packFor, turnedOut) };
  };
}
