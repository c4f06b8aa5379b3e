import type { Answer } from '#model/job.ts';
import type { QuestionId } from './checklist.ts';
import type { Facts } from './facts.ts';

/** The answer to a question of the checklist; null where nobody answered or it is not known. */
export function answerTo({ job }: Facts, question: QuestionId): Answer['value'] {
  const answer = job.answers.find((each) => each.question === question);
  return answer === undefined || answer.certainty === 'unknown' ? null : answer.value;
}
