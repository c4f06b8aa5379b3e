import type { Job } from '#model/job.ts';
import type { Certainty, CertaintyByField } from '#model/primitives.ts';
import type { Ask, AskField, FactState } from './ask.ts';

/** How a fact stands: nothing said where there is no value, else by the survey's word, which is `seen` where it has none. */
export function factState(value: unknown, certainty: Certainty | undefined): FactState {
  if (value === undefined || value === null || certainty === 'unknown') return 'open';
  return certainty ?? 'seen';
}

/** A field for a fact of a thing, as the thing has it. */
export function fieldOf(
  subjectId: string,
  thing: { readonly certainty?: CertaintyByField | undefined },
  fact: string,
): AskField {
  return { subjectId, fact, state: factState(Reflect.get(thing, fact), thing.certainty?.[fact]) };
}

/** Whether a fact still has to be found out: nobody said it, or it is only assumed. */
export const isUnsettled = ({ state }: Pick<AskField, 'state'>): boolean =>
  state === 'open' || state === 'assumed';

/** An ask whose open things are those of its fields that are not settled. */
export const askOf = (head: Omit<Ask, 'subjects'>): Ask => ({
  ...head,
  subjects: [...new Set(head.fields.filter(isUnsettled).map(({ subjectId }) => subjectId))].sort(),
});

/** How an answer of the checklist stands. */
export function answerState({ answers }: Pick<Job, 'answers'>, question: string): FactState {
  const answer = answers.find((each) => each.question === question);
  return factState(answer?.value, answer?.certainty);
}

/** The fact that an answer of the checklist goes by, as the field of it does. */
export const ANSWER = 'answer';

/** The thing that answers of the checklist are of: none of the drawing. */
export const ANSWERS = 'answers';
