import type { Finding } from '#engine/rules/finding.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { differenceWords } from '../found-ways/what-if-words.ts';
import { metres, pounds } from '../written.ts';

/** What would change in a scheme if the way of one of its cables were pinned. */
export interface PinnedChanges {
  readonly words: string;
  /** What would fail, ask for a decision or be unproven then, and does not now. */
  readonly worse: readonly Finding[];
  /** What does so now, and would not any more. */
  readonly better: readonly Finding[];
}

const graveOf = ({ findings }: SchemeEstimate): readonly Finding[] =>
  findings.filter(
    ({ outcome, origin }) =>
      origin === 'scheme' && (outcome === 'fails' || outcome === 'decide' || outcome === 'not-proven'),
  );

const keyOf = ({ rule, subject, outcome, messageId }: Finding): string =>
  [rule, subject, outcome, messageId].join(' ');

const without = (some: readonly Finding[], others: readonly Finding[]): readonly Finding[] => {
  const keys = new Set(others.map(keyOf));
  return some.filter((one) => !keys.has(keyOf(one)));
};

/** A scheme as it is beside the same with the way of a cable pinned. */
export function pinnedChanges(before: SchemeEstimate, after: SchemeEstimate, runId: string): PinnedChanges {
  const lengthOf = ({ runs }: SchemeEstimate): string => {
    const lengthMm = runs.find(({ id }) => id === runId)?.lengthMm ?? null;
    return lengthMm === null ? 'a length not known' : metres(lengthMm);
  };
  const [was, is] = [before.totals.grossPence, after.totals.grossPence];
  return {
    words: `${lengthOf(after)} of cable in place of ${lengthOf(before)}; ${differenceWords(is - was)} (${pounds(is)}).`,
    worse: without(graveOf(after), graveOf(before)),
    better: without(graveOf(before), graveOf(after)),
  };
}
