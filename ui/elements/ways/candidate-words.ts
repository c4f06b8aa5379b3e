import { countWords } from '#drawing/count-words.ts';
import type { Outcome } from '#engine/rules/finding.ts';
import type { Candidate } from '../../found-ways/candidate.ts';
import { messWords } from '../../found-ways/search-words.ts';
import { counted, hoursWritten, metresShort, pounds } from '../../written.ts';
import { withVatWords } from '../price/vat-words.ts';

/** The outcomes that a card counts. */
export const openOutcomes: readonly Outcome[] = ['fails', 'decide', 'not-proven'];

/** What a candidate is like, figure by figure. */
export function figuresOf({ totals, cable, holes, boards, messPoints }: Candidate): readonly string[] {
  return [
    hoursWritten(totals.hours),
    `${cable.typicalRuns > 0 ? 'about ' : ''}${metresShort(cable.cableMm)} cable`,
    counted(holes, 'hole'),
    `${counted(boards, 'board')} up`,
    `disturbance ${messWords(messPoints)}`,
  ];
}

/** A candidate in one sentence, for who hears it. */
export function toldOf(candidate: Candidate, number: number): string {
  const { totals, checks, efficient, calmest } = candidate;
  const open = openOutcomes
    .filter((outcome) => checks[outcome] > 0)
    .map((outcome) => countWords(outcome, checks[outcome]));
  const price = `${pounds(totals.grossPence)} ${withVatWords(candidate)}`;
  return [
    `Way ${number}: ${price}`,
    ...figuresOf(candidate),
    ...(calmest ? ['least disturbing'] : []),
    ...(efficient ? ['efficient'] : []),
    ...open,
    ...candidate.cautions,
  ].join(', ');
}
