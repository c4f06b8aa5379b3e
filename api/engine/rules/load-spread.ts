import type { CircuitProof } from '../proof/circuit-proof.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { heaviestLeg } from './heaviest-leg.ts';
import { originOfUnproved, proofsOf } from './proved.ts';
import { type CheckResult, rule } from './rule.ts';
import { nameOf } from './wiring.ts';

type Message = 'over' | 'atOnce' | 'within';

/** The loads that are named do not sit so near one end of a ring that a cable carries more than it may for long. */
export const loadSpread = rule<Message>({
  id: 'LS1',
  title: 'Spread of load along the ring',
  source: 'BS 7671 433.1.204 (unlikely to be exceeded for long periods); Appendix 15 on spreading loads',
  messages: {
    over: 'With the loads that are named, {name} carries {actual} A; it may carry {limit} A.',
    atOnce: 'With all named loads on at once, {name} carries {actual} A; it may carry {limit} A.',
    within:
      'With all named loads on at once, no cable carries more than it may: {actual} A of {limit} A in {name}.',
  },
  remedies: {
    over: 'Move heavy loads apart, or give them a circuit of their own; a designer must decide whether this lasts.',
    atOnce:
      'Judge whether they run together for long; move heavy loads apart, or give them a circuit of their own.',
  },
  couldFail: false,
  check: (facts) =>
    proofsOf(facts)
      .filter(({ shape }) => shape === 'ring')
      .flatMap((proof) => judged(facts, proof)),
});

function judged(facts: Facts, proof: CircuitProof): readonly CheckResult<Message>[] {
  const [usual, all] = [heaviestLeg(proof, 'named-loads'), heaviestLeg(proof, 'all-named-loads')];
  if (usual === null || all === null) return [];
  const isUsual = usual.share > 1;
  const leg = isUsual ? usual : all;
  const isOver = leg.share > 1;
  return [
    {
      outcome: isOver ? 'decide' : 'passes',
      messageId: isUsual ? 'over' : isOver ? 'atOnce' : 'within',
      subjectId: leg.leg,
      origin: originOfUnproved(facts),
      ...figures(leg.currentA, leg.izA, 'A', { name: nameOf(facts, leg.leg) }),
    },
  ];
}
