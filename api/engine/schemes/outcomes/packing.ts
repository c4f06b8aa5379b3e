import type { OutcomePacker } from './outcome-packer.ts';
import type { OutcomePlan, PackChoice, TakeBackFor } from './outcome-plan.ts';

/** What goes back if one question turns out so, and everything else as it is counted. */
export interface TakeBackOfOutcome extends TakeBackFor {
  /** Null where everything turns out as it is counted. */
  readonly question: string | null;
  readonly outcome: string | null;
}

/** What to buy for a scheme while things are open, by what is bought for, and what of it goes back. */
export interface Packing {
  readonly plan: OutcomePlan;
  /** As counted first, then each other outcome that is bought for, as questions and outcomes stand in the plan. */
  readonly takeBack: readonly TakeBackOfOutcome[];
}

/** The plan of a choice with what goes back for each single outcome that it serves. */
export function packingBy(packer: OutcomePacker, packFor: PackChoice): Packing {
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
