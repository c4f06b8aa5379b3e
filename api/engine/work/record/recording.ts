import type { Reading } from '#model/installation.ts';
import type { Firm } from '#model/library.ts';
import type { Worked } from '../../connections/worked.ts';
import { isGuess } from '../../plan/is-guess.ts';
import type { CircuitProof } from '../../proof/circuit-proof.ts';
import type { Finding } from '../../rules/finding.ts';
import type { TestSheet } from '../tests/sheet-test.ts';

/** What a record is filled from. */
export interface Recording {
  /** With those readings alone that count for the record. */
  readonly worked: Worked;
  readonly proof: readonly CircuitProof[];
  readonly findings: readonly Finding[];
  /** Of the house as found: what it says of circuits that the scheme does not touch. */
  readonly findingsAsFound: readonly Finding[];
  readonly firm: Firm;
  readonly sheet: TestSheet;
}

/** Whether an instrument showed it after the work: what is taken before it, or only supposed, was not tested. */
export const isTested = ({ phase, certainty }: Reading): boolean =>
  phase === 'after' && !Object.values(certainty ?? {}).some(isGuess);

/** A worked scheme of the same job with those readings alone that were taken before the work, or count as tested. */
export const withTested = (worked: Worked): Worked => ({
  ...worked,
  job: {
    ...worked.job,
    readings: worked.job.readings.filter((reading) => reading.phase === 'before' || isTested(reading)),
  },
});

/** What a rule says of a subject; of the first that it says anything of where none is named; null: nothing. */
export const findingOf = (
  { findings }: Pick<Recording, 'findings'>,
  rule: string,
  subject?: string,
): Finding | null =>
  findings.find((each) => each.rule === rule && (subject === undefined || each.subject === subject)) ?? null;

/** What a check says where it does not pass. */
export const saidUnlessPassed = (finding: Finding | null): string | null =>
  finding === null || finding.outcome === 'passes' ? null : finding.message;
