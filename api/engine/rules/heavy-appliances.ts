import type { CircuitProof } from '../proof/circuit-proof.ts';
import { FURTHEST_A } from '../proof/scenarios.ts';
import { counted } from './counted.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { heaviestLeg } from './heaviest-leg.ts';
import { GROWN_RATIO, originOfUnproved, proofsOf } from './proved.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, nameOf } from './wiring.ts';

type Message = 'near' | 'anywhere' | 'within' | 'none' | 'notTold';
type Heaviest = NonNullable<ReturnType<typeof heaviestLeg>>;

/** What the scenarios have points draw, in words. */
const drawn = `${FURTHEST_A} A at one and the rest of the rating at the next`;

/** Heavy appliances close to one end of a ring load the short way to the board. */
export const heavyAppliances = rule<Message>({
  id: 'LS2',
  title: 'Heavy appliances near one end of a ring',
  source: 'BS 7671 433.1.204 (unlikely to be exceeded for long periods) and Appendix 15 on spreading loads',
  messages: {
    near: `Heavy appliances are likely at {points}: with ${drawn}, nearest one end of {circuit}, {name} carries {actual} A; it may carry {limit} A.`,
    within: `With ${drawn} where heavy appliances are likely ({points}), {name} carries {actual} A of {limit} A.`,
    anywhere: `Even with ${drawn} nearest one end of {circuit}, {name} carries {actual} A of {limit} A.`,
    none: 'No point of {circuit} is in a kitchen or utility room, and no heavy load is named there.',
    notTold: `Of {count} of {circuit} neither room nor load is told. With ${drawn} nearest one end, {name} would carry {actual} A of {limit} A.`,
  },
  remedies: {
    near: 'Judge whether they run together for long; else a circuit of their own, or the ring carried so that they lie further in.',
    notTold: 'Ask what is plugged in where, and name the loads.',
  },
  couldFail: false,
  check: (facts) =>
    proofsOf(facts)
      .filter(({ shape }) => shape === 'ring')
      .flatMap((proof) => judged(facts, proof)),
});

function judged(facts: Facts, proof: CircuitProof): readonly CheckResult<Message>[] {
  const anywhere = heaviestLeg(proof, 'near-one-end');
  if (anywhere === null || proof.heavyAppliances === undefined) return [];
  const { points, untold } = proof.heavyAppliances;
  const heavy = heaviestLeg(proof, 'heavy-appliances');
  const values = {
    circuit: circuitName(facts, proof.circuit),
    points: points.map((id) => nameOf(facts, id)).join(', '),
    count: counted(untold.length, 'point'),
  };
  const told = (leg: Heaviest) => ({
    subjectId: leg.leg,
    origin: originOfUnproved(facts),
    ...figures(leg.currentA, leg.izA, 'A', { ...values, name: nameOf(facts, leg.leg) }),
  });
  if (anywhere.share <= 1) return [{ ...told(anywhere), outcome: 'passes', messageId: 'anywhere' }];
  if (heavy !== null && heavy.share > 1)
    return [{ ...told(heavy), origin: originOf(facts, proof, heavy), outcome: 'decide', messageId: 'near' }];
  if (untold.length > 0)
    return [{ ...told(anywhere), subjectId: proof.circuit, outcome: 'not-proven', messageId: 'notTold' }];
  if (heavy !== null) return [{ ...told(heavy), outcome: 'passes', messageId: 'within' }];
  const subjectId = proof.circuit;
  return [{ subjectId, origin: originOfUnproved(facts), outcome: 'passes', messageId: 'none', values }];
}

/** The house as found where it was so before, and the scheme makes it no worse. */
function originOf(facts: Facts, { circuit }: CircuitProof, now: Heaviest): CheckResult<Message>['origin'] {
  const before = heaviestLeg(facts.proofsFound.get(circuit), 'heavy-appliances');
  const wasSo = before !== null && before.share > 1 && now.share <= before.share * GROWN_RATIO;
  return wasSo ? 'found' : originOfUnproved(facts);
}
