import type { Finding } from '#engine/rules/finding.ts';

const keyOf = ({ rule, subject, messageId }: Finding): string => `${rule} ${subject} ${messageId}`;

/** What was given out for a finding: the same again as long as the cost is, so that it is not drawn anew. */
const given = new WeakMap<Finding, Finding>();

function withCost(finding: Finding, consequencePence: number | null): Finding {
  const last = given.get(finding);
  if (last?.consequencePence === consequencePence) return last;
  const now = { ...finding, consequencePence };
  given.set(finding, now);
  return now;
}

/** Findings worked out live, in their order, with what their remedies cost a moment ago; null for those that are new. */
export function withCostsOfBefore(
  live: readonly Finding[],
  before: readonly Finding[] | undefined,
): readonly Finding[] {
  const costs = new Map(before?.map((finding) => [keyOf(finding), finding.consequencePence]));
  return live.map((finding) =>
    finding.fix === null ? finding : withCost(finding, costs.get(keyOf(finding)) ?? null),
  );
}
