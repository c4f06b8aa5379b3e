import type { Job } from '#model/job.ts';
import { isSameData } from '../../plan/same-data.ts';
import { withoutPictures } from '../../plan/without-pictures.ts';
import { checklist, type Question } from '../../rules/checklist.ts';
import { circuitSteps } from './circuit-steps.ts';
import { connectionSteps } from './connection-steps.ts';
import { extraSteps } from './extra-steps.ts';
import { houseSteps } from './house-steps.ts';
import { listDifference, type MoveStep, withoutThing, withThing } from './move-step.ts';
import { withJob } from './priced-state.ts';
import { termSteps } from './term-steps.ts';

const questions: readonly Question[] = checklist;

/** The house and its supply as the survey tells them, and answers to its questions. */
function surveySteps(before: Job, after: Job): readonly MoveStep[] {
  const plain = (['site', 'supply'] as const)
    .filter((part) => !isSameData(before[part], after[part]))
    .map((part): MoveStep => {
      const words = part === 'site' ? 'The house: found otherwise' : 'The supply: found otherwise';
      return {
        cause: 'survey',
        words,
        detail: '',
        subjects: [part],
        apply: (state) => withJob(state, { [part]: after[part] }),
      };
    });
  const keyOf = ({ question }: Job['answers'][number]): string => question;
  const { added, changed, removed } = listDifference(before.answers, after.answers, keyOf);
  const answered = [...added, ...changed.map((one) => one.after), ...removed]
    .map(keyOf)
    .toSorted()
    .map((question): MoveStep => {
      const now = after.answers.find((one) => one.question === question);
      return {
        cause: 'survey',
        words: `Answer: ${questions.find(({ id }) => id === question)?.words ?? question}`,
        detail: '',
        subjects: [question],
        apply: (state) => {
          const list = state.job.answers;
          const answers =
            now === undefined ? withoutThing(list, question, keyOf) : withThing(list, now, keyOf);
          return withJob(state, { answers });
        },
      };
    });
  return [...plain, ...answered];
}

/**
 * The changes from one job to another, both with one scheme, in an order in which everything that a thing names is there
 * when its turn comes: the job's terms; what the survey says of house and supply; storeys, walls and rooms; boards, circuits,
 * points and cables as found, readings; remedies and connections of the scheme; work that is not on the
 * drawing; then what is gone, from points back to storeys. Neither a photo nor what the van holds changes what is agreed.
 */
export function jobSteps(from: Job, to: Job): readonly MoveStep[] {
  const [before, after] = [withoutPictures(from), withoutPictures(to)];
  const house = houseSteps(before, after);
  const circuits = circuitSteps(before, after);
  const extras = extraSteps(before, after);
  const jobTerms = termSteps(before.terms, after.terms, {
    cause: 'terms',
    whose: '',
    termsOf: (state) => state.job.terms,
    apply: (state, terms) => withJob(state, { terms }),
  });
  return [
    ...jobTerms,
    ...surveySteps(before, after),
    ...house.come,
    ...circuits.come,
    ...connectionSteps(before, after),
    ...extras.come,
    ...extras.go,
    ...circuits.go,
    ...house.go,
  ];
}
