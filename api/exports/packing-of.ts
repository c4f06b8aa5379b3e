import { packForOutcomes } from '#engine/pack-for-outcomes.ts';
import { otherSchemes } from '#engine/schemes/outcomes/other-schemes.ts';
import type { OutcomePlan, TakeBackFor } from '#engine/schemes/outcomes/outcome-plan.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import type { Papers } from './papers.ts';

/** What goes back if one question turns out so, and everything else as it is counted. */
interface TakeBackOfOutcome extends TakeBackFor {
  /** Null where everything turns out as it is counted. */
  readonly question: string | null;
  readonly outcome: string | null;
}

/** What to buy for the scheme that papers show while things are open, by what the job says is bought for. */
export interface Packing {
  readonly plan: OutcomePlan;
  /** As counted first, then each other outcome that is bought for. */
  readonly takeBack: readonly TakeBackOfOutcome[];
}

/** Works it out; null for a job that has no scheme. */
export function packingOf(
  job: Job,
  library: Library,
  { result, chosen }: Pick<Papers, 'result' | 'chosen'>,
): Packing | null {
  if (chosen === null) return null;
  const { packFor = [] } = job;
  const otherIds = otherSchemes(result.schemes, chosen.id, packFor);
  const packer = packForOutcomes(job, library, { schemeId: chosen.id, otherIds });
  if (packer === null) return null;
  const plan = packer.plan(packFor);
  const otherwise = plan.questions.flatMap(({ id, outcomes }) =>
    outcomes.flatMap((outcome, i) =>
      i > 0 && outcome.isServed ? [{ question: id, outcome: outcome.id }] : [],
    ),
  );
  return {
    plan,
    takeBack: [
      { question: null, outcome: null, ...packer.takeBack(packFor, {}) },
      ...otherwise.map((one) => ({
        ...one,
        ...packer.takeBack(packFor, { [one.question]: one.outcome }),
      })),
    ],
  };
}
