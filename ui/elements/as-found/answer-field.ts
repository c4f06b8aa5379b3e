import type { TemplateResult } from 'lit';
import { checklist, type Question } from '#engine/rules/checklist.ts';
import type { Answer, Job } from '#model/job.ts';
import { setAnswer, setAnswerCertainty } from '../../edits/answers.ts';
import { choiceFact, numberFact } from './fact-fields.ts';

const questions: readonly Question[] = checklist;

/** The question of the checklist that an ask is; undefined where it is none. */
export const questionOf = (id: string): Question | undefined =>
  questions.find((question) => question.id === id);

/** The field that answers a question of the checklist: a choice, or a number with its unit. */
export function answerField(job: Pick<Job, 'answers'>, question: Question): TemplateResult {
  const answer = job.answers.find((known) => known.question === question.id);
  const certainty = answer === undefined || answer.value === null ? undefined : { answer: answer.certainty };
  const sure = (_: 'answer', known: Answer['certainty']) => setAnswerCertainty(question, known);
  const value = answer?.value ?? undefined;
  const { unit } = question;
  if (unit !== null)
    return numberFact(
      {
        thing: { answer: typeof value === 'number' ? value : undefined },
        set: (_: 'answer', number: number | null) => setAnswer(question, number),
        certainty,
        sure,
      },
      'answer',
      { label: 'Answer', unit, max: 10_000 },
    );
  return choiceFact(
    {
      thing: { answer: value === undefined ? undefined : String(value) },
      set: (_: 'answer', word: string | null) => setAnswer(question, answerOf(question, word)),
      certainty,
      sure,
    },
    'answer',
    {
      label: 'Answer',
      options: question.answers.map((each) => ({ value: String(each.value), label: each.words })),
      empty: 'Not answered',
    },
  );
}

/** The value of the file that a choice stands for: a word, or true and false. */
const answerOf = ({ answers }: Question, word: string | null): string | boolean | null =>
  answers.find(({ value }) => String(value) === word)?.value ?? null;
