import type { Facts } from './facts.ts';
import type { Finding, Outcome } from './finding.ts';
import type { CheckResult, Rule } from './rule.ts';

const order: readonly Outcome[] = ['fails', 'decide', 'not-proven', 'advice', 'passes'];

/** Puts values into the `{places}` of a sentence; a place without a value stays as it is, so that a test sees it. */
export const filled = (sentence: string, values: Readonly<Record<string, string | number>>): string =>
  sentence.replace(/\{(\w+)\}/g, (place, name: string) => String(values[name] ?? place));

function findingOf(rule: Rule, result: CheckResult<string>, edition: string): Finding {
  const values = {
    actual: result.actual ?? '',
    limit: result.limit ?? '',
    unit: result.unit ?? '',
    ...result.values,
  };
  const message = rule.messages[result.messageId];
  if (message === undefined) throw new Error(`rule ${rule.id} has no message "${result.messageId}"`);
  const remedy = rule.remedies[result.messageId];
  const stopGate =
    result.stopGate === true && (result.outcome === 'fails' || result.outcome === 'not-proven');
  return {
    rule: rule.id,
    title: rule.title,
    outcome: result.outcome,
    subject: result.subjectId,
    messageId: result.messageId,
    actual: result.actual ?? null,
    limit: result.limit ?? null,
    unit: result.unit ?? null,
    edition,
    source: rule.source,
    message: filled(message, values),
    remedy: result.outcome === 'passes' || remedy === undefined ? null : filled(remedy, values),
    fix: result.fix ?? null,
    consequencePence: null,
    origin: result.origin,
    stopGate,
    gates: rule.couldFail && (stopGate || result.origin === 'scheme'),
  };
}

const byOutcome = (a: Finding, b: Finding): number =>
  order.indexOf(a.outcome) - order.indexOf(b.outcome) ||
  (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0) ||
  (a.subject < b.subject ? -1 : a.subject > b.subject ? 1 : 0);

/** Runs every rule that applies; findings sorted from the gravest to the mildest, then by rule and subject. */
export function runRules(facts: Facts, rules: readonly Rule[]): readonly Finding[] {
  return rules
    .filter((rule) => rule.applies(facts))
    .flatMap((rule) => rule.check(facts).map((result) => findingOf(rule, result, facts.edition)))
    .sort(byOutcome);
}

/** Those findings alone by which a scheme breaks a rule of its own doing, in the same order; the rest is not put into words. */
export function causedFailures(facts: Facts, rules: readonly Rule[]): readonly Finding[] {
  return rules
    .filter((rule) => rule.couldFail && rule.applies(facts))
    .flatMap((rule) =>
      rule
        .check(facts)
        .filter(({ outcome, origin }) => outcome === 'fails' && origin === 'scheme')
        .map((result) => findingOf(rule, result, facts.edition)),
    )
    .sort(byOutcome);
}
