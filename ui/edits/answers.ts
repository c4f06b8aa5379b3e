import type { Question } from '#engine/rules/checklist.ts';
import type { Answer } from '#model/job.ts';
import type { Certainty } from '#model/primitives.ts';
import type { JobEdit } from '../job-events.ts';

/** Answers a question of the checklist, one answer a question; null takes the answer back. */
export const setAnswer = (
  { id, words }: Pick<Question, 'id' | 'words'>,
  value: Exclude<Answer['value'], null> | null,
): JobEdit => ({
  label: value === null ? `Take back: ${words}` : `Answer: ${words}`,
  change: (job) => {
    const known = job.answers.find(({ question }) => question === id);
    if (value === null) job.answers = job.answers.filter(({ question }) => question !== id);
    else if (known === undefined) job.answers.push({ question: id, value, certainty: 'seen' });
    else {
      known.value = value;
      // It was put off: what is answered now is known by itself.
      if (known.certainty === 'unknown') known.certainty = 'seen';
    }
  },
});

/** Says how sure an answer is. */
export const setAnswerCertainty = (
  { id, words }: Pick<Question, 'id' | 'words'>,
  certainty: Certainty,
): JobEdit => ({
  label: `How sure: ${words}`,
  change: ({ answers }) => {
    const known = answers.find(({ question }) => question === id);
    if (known !== undefined) known.certainty = certainty;
  },
});
