import type { Terms } from '#model/job.ts';
import { isSameData } from '../../plan/same-data.ts';
import { termNames } from '../../price/term-names.ts';
import { capital, pounds } from '../said.ts';
import { fromTo, type MoveStep } from './move-step.ts';
import type { SchemeState } from './priced-state.ts';

/** Whose terms they are: a job's, or a firm's. */
export interface WhoseTerms {
  readonly cause: MoveStep['cause'];
  /** Before a term's name; empty for the job's own. */
  readonly whose: string;
  readonly termsOf: (state: SchemeState) => Terms;
  readonly apply: (state: SchemeState, terms: Terms) => SchemeState;
}

function valueWords(term: keyof Terms, value: unknown): string {
  if (value === undefined) return 'not set';
  if (typeof value === 'number') {
    if (term.endsWith('Pence')) return pounds(value);
    if (term.endsWith('Percent')) return `${value} %`;
    if (term.endsWith('Hours')) return `${value} h`;
    if (term === 'parking') return `${value} days`;
    return term.endsWith('Min') ? `${value} min` : String(value);
  }
  return typeof value === 'string' ? value.replaceAll('-', ' ') : '';
}

const nameWords = (whose: string, term: keyof Terms): string =>
  whose === '' ? capital(termNames[term]) : `${whose}${termNames[term]}`;

/** The changes from some terms to others, one term at a time, in the order of their list. */
export function termSteps(before: Terms, after: Terms, whose: WhoseTerms): readonly MoveStep[] {
  // The list of names has every term there is, as its type says.
  const terms = Object.keys(termNames) as (keyof Terms)[];
  return terms
    .filter((term) => !isSameData(before[term], after[term]))
    .map((term) => ({
      cause: whose.cause,
      words: nameWords(whose.whose, term),
      detail: fromTo(valueWords(term, before[term]), valueWords(term, after[term])),
      subjects: [],
      apply: (state) => {
        const { [term]: _, ...others } = whose.termsOf(state);
        const value = after[term] === undefined ? {} : { [term]: after[term] };
        // Terms without one of theirs, and that one as the other terms have it.
        return whose.apply(state, { ...others, ...value } as Terms);
      },
    }));
}
