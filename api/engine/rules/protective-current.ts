import { loadNodeOf } from '../circuit/load-side.ts';
import { circuitRcd } from '../proof/rcd-cover.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { originOfUnproved } from './proved.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName } from './wiring.ts';

/** Part of an RCD's rated residual current that may flow all the time. Source: BS 7671 531.3.2. */
const STEADY_RATIO = 0.3;
/**
 * What appliances of class I may leak at most: heating ones 0.75 mA a kW up to 5 mA, and no less than 0.75 mA.
 * Source: BS EN 60335-1, clause 13 (from memory).
 */
const LEAK_MA = { perKw: 0.75, least: 0.75, most: 5 } as const;

/** Named loads do not leak so much together that the RCD trips without a fault. */
export const protectiveCurrent = rule<'over' | 'within'>({
  id: 'PC1',
  title: 'Leakage behind one RCD',
  source: 'BS 7671 531.3.2; leakage by BS EN 60335-1 (from memory)',
  messages: {
    over: 'The loads named on {circuit} may leak {actual} mA together; {limit} mA may flow all the time behind its RCD.',
    within: 'The loads named on {circuit} leak {actual} mA at the most, of {limit} mA behind its RCD.',
  },
  remedies: { over: 'An RCBO for each circuit, or measure what really leaks.' },
  couldFail: false,
  check: (facts) => facts.circuitIds.flatMap((id) => judged(facts, id)),
});

const leakMa = (watts: number): number =>
  Math.min(LEAK_MA.most, Math.max(LEAK_MA.least, (watts / 1000) * LEAK_MA.perKw));

function judged(facts: Facts, circuitId: string): readonly CheckResult<'over' | 'within'>[] {
  const { mA } = circuitRcd(facts, circuitId);
  const places = facts.shapes.get(circuitId)?.places ?? [];
  const nodes = new Set(places.map(({ nodeId }) => nodeId));
  const onCircuit = facts.job.points.filter(({ id }) => nodes.has(id) || nodes.has(loadNodeOf(id)));
  const watts = [
    ...onCircuit.flatMap(({ load }) => load?.watts ?? []),
    ...(facts.job.circuits.find(({ id }) => id === circuitId)?.loads ?? []).map((load) => load.watts),
  ];
  if (mA === null || watts.length === 0) return [];
  const sumMa = watts.reduce((sum, each) => sum + leakMa(each), 0);
  const isOver = sumMa > mA * STEADY_RATIO;
  return [
    {
      outcome: isOver ? 'decide' : 'passes',
      messageId: isOver ? 'over' : 'within',
      subjectId: circuitId,
      origin: originOfUnproved(facts),
      ...figures(sumMa, mA * STEADY_RATIO, 'mA', { circuit: circuitName(facts, circuitId) }),
    },
  ];
}
