import type { OutcomeQuestion } from '#engine/schemes/outcomes/outcome-plan.ts';
import type { PackFor } from '#model/job.ts';
import type { JobEdit } from '../job-events.ts';

/** Sets which outcomes of a question are bought for; with the first alone, as it is counted, nothing is kept of it. */
export function packForOutcome(
  { id, words, outcomes }: Pick<OutcomeQuestion, 'id' | 'words' | 'outcomes'>,
  served: readonly string[],
): JobEdit {
  return {
    label: `Buy for: ${words}`,
    change: (job) => {
      setPackFor(job, choiceOf({ id, outcomes }, served));
    },
  };
}

/** Buys for every outcome of several questions at once. */
export function packForAll(
  questions: readonly Pick<OutcomeQuestion, 'id' | 'outcomes'>[],
  label: string,
): JobEdit {
  return {
    label,
    change: (job) => {
      for (const question of questions)
        setPackFor(
          job,
          choiceOf(
            question,
            question.outcomes.map(({ id }) => id),
          ),
        );
    },
  };
}

interface Choice {
  readonly question: string;
  /** As the question lists them; null for what is counted by. */
  readonly outcomes: readonly string[] | null;
}

function choiceOf(
  { id, outcomes }: Pick<OutcomeQuestion, 'id' | 'outcomes'>,
  served: readonly string[],
): Choice {
  const chosen = outcomes.filter((outcome) => served.includes(outcome.id)).map((outcome) => outcome.id);
  const isCounted = chosen.length === 0 || (chosen.length === 1 && chosen[0] === outcomes[0]?.id);
  return { question: id, outcomes: isCounted ? null : chosen };
}

function setPackFor(job: { packFor?: PackFor[] | undefined }, { question, outcomes }: Choice): void {
  const others = (job.packFor ?? []).filter((one) => one.question !== question);
  const all = outcomes === null ? others : [...others, { question, outcomes: [...outcomes] }];
  if (all.length === 0) delete job.packFor;
  else job.packFor = all.toSorted((a, b) => (a.question < b.question ? -1 : 1));
}
