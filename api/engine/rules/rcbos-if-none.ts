import type { Remedy } from '#model/scheme.ts';
import type { Worked } from '../connections/worked.ts';
import { remembered } from '../plan/remembered.ts';
import { circuitRcd } from '../proof/rcd-cover.ts';
import type { Facts } from './facts.ts';
import { rcboFor } from './rcbo-for.ts';
import { rcdForBuriedCable } from './rcd-for-buried-cable.ts';
import { rcdForOutlets } from './rcd-for-outlets.ts';
import type { CheckResult } from './rule.ts';
import { unprovedFacts } from './unproved-facts.ts';

/**
 * The RCBOs that a scheme needs if circuits turn out to have no RCD, of which that is only assumed or not known at all: one a
 * circuit, sorted by it. Empty where the board was looked at.
 */
export const rcbosIfNone = remembered((worked: Worked): readonly Remedy[] => {
  if (worked.scheme === null) return [];
  const facts = unprovedFacts(worked);
  const fixes = [rcdForOutlets, rcdForBuriedCable]
    .flatMap((rule) => rule.check(facts))
    .flatMap((result) => fixesOf(facts, result));
  const byCircuit = new Map(fixes.map((fix) => [fix.at ?? '', fix]));
  return [...byCircuit.keys()].sort().flatMap((id) => byCircuit.get(id) ?? []);
});

function fixesOf(facts: Facts, { messageId, fix, subjectId }: CheckResult<string>): readonly Remedy[] {
  if (messageId === 'assumedNone') return fix?.at === undefined ? [] : [fix];
  if (messageId !== 'unknown') return [];
  const circuitIds = facts.runs.find(({ id }) => id === subjectId)?.circuitIds ?? [subjectId];
  return circuitIds
    .filter((id) => circuitRcd(facts, id).state === 'unknown')
    .flatMap((id) => rcboFor(facts, id).fix ?? []);
}
