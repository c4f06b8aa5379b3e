import type { OpenQuestion, SurveyAsk } from './estimate-result.ts';

/** Of the survey's list, what is not settled and makes the price wider, dearest first, ties by name. */
export function openQuestions(survey: readonly SurveyAsk[]): readonly OpenQuestion[] {
  return survey
    .flatMap(({ id, subjects, words, worth }) =>
      worth === null ? [] : [{ question: id, subjects, words, worthPence: worth.rangePence }],
    )
    .sort((a, b) => b.worthPence - a.worthPence || (a.question < b.question ? -1 : 1));
}
