import type { CircuitProof, PointProof } from '../proof/circuit-proof.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { originOfExcess, originOfUnproved, proofsOf, worstPoint } from './proved.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, nameOf } from './wiring.ts';

type Message = 'within' | 'over' | 'untold' | 'notWhole' | 'notWholeOver';

/** The volt drop at the furthest point stays within what appliances bear. */
export const voltDrop = rule<Message>({
  id: 'VD1',
  title: 'Volt drop',
  source: 'BS 7671 525 with Appendix 4 §6.4; the load by the IET On-Site Guide 7.2.2',
  messages: {
    within: '{name} has {actual} V of {limit} V under the handbook’s load.',
    over: '{name} has {actual} V under the handbook’s load; {limit} V may be dropped.',
    untold: 'No cable of {circuit} is recorded: its volt drop cannot be worked out.',
    notWhole:
      '{name} would have {actual} V of {limit} V, but lengths, cables or the device of {circuit} are only assumed.',
    notWholeOver:
      '{name} would have {actual} V, above {limit} V, by lengths, cables or a device of {circuit} that are only assumed.',
  },
  remedies: {
    over: 'A shorter way, a larger cable, or a circuit of its own for the new points.',
    untold: 'Trace the circuit, or read its ends at the board: the length follows from the resistance.',
    notWhole: 'Read the circuit end to end at the board, and look at its cable and device.',
    notWholeOver: 'Read the circuit end to end at the board, and look at its cable and device.',
  },
  couldFail: true,
  check: (facts) => proofsOf(facts).map((proof) => judged(facts, proof)),
});

const dropOf = ({ dropV }: PointProof): number | null => dropV;

function judged(facts: Facts, proof: CircuitProof): CheckResult<Message> {
  const circuit = circuitName(facts, proof.circuit);
  const worst = worstPoint(proof, dropOf);
  if (worst === null)
    return {
      outcome: 'not-proven',
      messageId: 'untold',
      subjectId: proof.circuit,
      origin: originOfUnproved(facts),
      values: { circuit },
    };
  const { point, figure: dropV } = worst;
  const name = nameOf(facts, point.point);
  const told = { subjectId: point.point, ...figures(dropV, proof.dropLimitV, 'V', { name, circuit }) };
  const isOver = dropV > proof.dropLimitV;
  if (!proof.isWhole)
    return {
      ...told,
      outcome: 'not-proven',
      messageId: isOver ? 'notWholeOver' : 'notWhole',
      origin: originOfUnproved(facts),
    };
  if (!isOver) return { ...told, outcome: 'passes', messageId: 'within', origin: originOfUnproved(facts) };
  const origin = originOfExcess(facts, proof.circuit, {
    now: dropV,
    limit: proof.dropLimitV,
    figure: dropOf,
  });
  return { ...told, outcome: 'fails', messageId: 'over', origin };
}
