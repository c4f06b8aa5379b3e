import type { Remedy } from '#model/scheme.ts';
import type { Worked } from '../connections/worked.ts';
import { remembered } from '../plan/remembered.ts';
import { rcdForBuriedCable } from './rcd-for-buried-cable.ts';
import { rcdForOutlets } from './rcd-for-outlets.ts';
import { unprovedFacts } from './unproved-facts.ts';

/**
 * The RCBOs that a scheme needs if it is true that circuits have no RCD, as is only assumed of them: one a circuit,
 * sorted by it. Empty where the board was looked at.
 */
export const rcbosIfAssumed = remembered((worked: Worked): readonly Remedy[] => {
  if (worked.scheme === null) return [];
  const facts = unprovedFacts(worked);
  const fixes = [rcdForOutlets, rcdForBuriedCable]
    .flatMap((rule) => rule.check(facts))
    .flatMap(({ messageId, fix }) => (messageId === 'assumedNone' && fix?.at !== undefined ? [fix] : []));
  const byCircuit = new Map(fixes.map((fix) => [fix.at ?? '', fix]));
  return [...byCircuit.keys()].sort().flatMap((id) => byCircuit.get(id) ?? []);
});
