import type { CircuitProof, PointProof } from '../proof/circuit-proof.ts';
import type { Facts } from './facts.ts';
import { originOfExcess, originOfUnproved, proofsOf, worstPoint } from './proved.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, nameOf } from './wiring.ts';

type Message =
  | 'within'
  | 'over'
  | 'byRcd'
  | 'noDevice'
  | 'noLoop'
  | 'noLoopConductor'
  | 'untold'
  | 'notWhole'
  | 'notWholeOver';

/** A fault to earth at any point is disconnected in time. */
export const disconnects = rule<Message>({
  id: 'ZS1',
  title: 'Disconnection time',
  source: 'BS 7671 411.3.2, 411.4.4, 411.4.204, 411.5.3, Tables 41.1 to 41.5',
  messages: {
    within: 'Zs at {name} is {actual} Ω warm, of {limit} Ω ({by}); a cold reading is compared with {cold} Ω.',
    over: 'Zs at {name} is {actual} Ω warm, above the {limit} Ω that disconnect in time ({by}).',
    byRcd:
      'Zs at {name} is {actual} Ω warm, above {limit} Ω ({by}); the RCD of the circuit would disconnect up to {rcd} Ω.',
    noDevice:
      'The device of {circuit} is not known, or no limit is held for it: disconnection is not proved.',
    noLoop: 'The loop before {circuit} is not known or only assumed: disconnection is not proved.',
    noLoopConductor: 'Some cable of {circuit} has no protective conductor of its own: no loop is worked out.',
    untold: 'No cable of {circuit} is recorded: disconnection is not proved.',
    notWhole: 'Zs at {name} would be {actual} Ω of {limit} Ω, by lengths or cables that are only assumed.',
    notWholeOver:
      'Zs at {name} would be {actual} Ω, above {limit} Ω, by lengths or cables that are only assumed.',
  },
  remedies: {
    over: 'A shorter way, a larger protective conductor, or a device that trips at less; an RCD where the rules let it disconnect.',
    byRcd: 'See that the RCD works, and record that it disconnects.',
    noDevice: 'Look at the device at the board.',
    noLoop: 'Measure Ze at the intake, or the loop at the board.',
    noLoopConductor: 'Measure Zs at the furthest point.',
    untold: 'Trace the circuit, or measure Zs at its points.',
    notWhole: 'Read the circuit end to end at the board, or measure Zs at the point.',
    notWholeOver: 'Read the circuit end to end at the board, or measure Zs at the point.',
  },
  couldFail: true,
  check: (facts) => proofsOf(facts).map((proof) => judged(facts, proof)),
});

const unproved = (facts: Facts, { circuit }: CircuitProof, messageId: Message): CheckResult<Message> => ({
  outcome: 'not-proven',
  messageId,
  subjectId: circuit,
  origin: originOfUnproved(facts),
  values: { circuit: circuitName(facts, circuit) },
});

/** How much of its limit a point's warm loop takes up. */
const shareOf = ({ zsHotOhm, zsMaxOhm }: PointProof): number | null =>
  zsHotOhm === null || zsMaxOhm === null ? null : zsHotOhm / zsMaxOhm;

function judged(facts: Facts, proof: CircuitProof): CheckResult<Message> {
  if (proof.points.length === 0) return unproved(facts, proof, 'untold');
  if (proof.limit.maximumOhm === null) return unproved(facts, proof, 'noDevice');
  if (proof.source.ohm === null || proof.source.from === 'assumed') return unproved(facts, proof, 'noLoop');
  const worst = worstPoint(proof, shareOf);
  if (worst === null) return unproved(facts, proof, 'noLoopConductor');
  return byLimit(facts, proof, worst);
}

function byLimit(
  facts: Facts,
  proof: CircuitProof,
  { point, figure: share }: { readonly point: PointProof; readonly figure: number },
): CheckResult<Message> {
  const told = toldOf(facts, proof, point);
  const isOver = share > 1;
  if (!proof.isWhole) {
    const messageId = isOver ? 'notWholeOver' : 'notWhole';
    return { ...told, outcome: 'not-proven', messageId, origin: originOfUnproved(facts) };
  }
  if (!isOver) return { ...told, outcome: 'passes', messageId: 'within', origin: originOfUnproved(facts) };
  const origin = originOfExcess(facts, proof.circuit, { now: share, limit: 1, figure: shareOf });
  const { rcdOhm, by } = proof.limit;
  const rcdDoes = by === 'overcurrent' && rcdOhm !== null && (point.zsHotOhm ?? 0) <= rcdOhm;
  return rcdDoes
    ? { ...told, outcome: 'advice', messageId: 'byRcd', origin }
    : { ...told, outcome: 'fails', messageId: 'over', origin };
}

const twoPlaces = (ohm: number): number => Math.round(ohm * 100) / 100;

function toldOf(facts: Facts, { limit }: CircuitProof, { point, zsHotOhm, zsMaxOhm }: PointProof) {
  const name = nameOf(facts, point);
  const cold = twoPlaces(limit.coldOhm ?? 0);
  const rcd = Math.round(limit.rcdOhm ?? 0);
  return {
    subjectId: point,
    actual: twoPlaces(zsHotOhm ?? 0),
    limit: twoPlaces(zsMaxOhm ?? 0),
    unit: 'Ω',
    values: { name, by: limit.words, cold, rcd, circuit: '' },
  };
}
