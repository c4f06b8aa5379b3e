import type { CircuitProof, ProtectiveProof } from '../proof/circuit-proof.ts';
import type { Facts } from './facts.ts';
import { originOfUnproved, proofsOf } from './proved.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, nameOf } from './wiring.ts';

type Message = 'byClass' | 'within' | 'byMaker' | 'overMaker' | 'askMaker' | 'noFigure' | 'untold';

/** The protective conductor takes a fault without harm until it is cleared. */
export const protectiveConductor = rule<Message>({
  id: 'AD1',
  title: 'Size of protective conductors',
  source: 'BS 7671 543.1.3, 434.5.2, Table 54.3 (k 115)',
  messages: {
    within: '{name}: a fault of {fault} A wants {actual} mm² at 0.1 s; it has {limit} mm².',
    byMaker: '{name}: the device lets {actual} A²s through by its maker; the conductor takes {limit} A²s.',
    overMaker:
      '{name}: the device lets {actual} A²s through by its maker; the conductor takes only {limit} A²s.',
    askMaker:
      '{name}: at {fault} A a breaker clears in less than 0.1 s, so what it lets through counts, and the survey has no figure: the conductor takes {limit} A²s. Breakers for homes usually let through far less.',
    byClass:
      '{name}: at {fault} A what the device lets through counts. One of energy class 3 lets {actual} A²s through at the most, and the conductor takes {limit} A²s.',
    noFigure: '{name}: no figure is held for what the device lets through at {fault} A.',
    untold:
      'The device of {circuit}, or the loop before it, is not known: its protective conductors are not judged.',
  },
  remedies: {
    overMaker: 'A larger protective conductor, or a device that lets less through.',
    askMaker: 'Take I²t at this current from the device’s data sheet, and enter it with the device.',
    byClass: 'Look for the 3 in a square on the device, and record it.',
    noFigure: 'Take I²t at this current from the device’s data sheet, and enter it with the device.',
    untold: 'Look at the device, and measure the loop at the intake or the board.',
  },
  couldFail: true,
  check: (facts) => proofsOf(facts).map((proof) => judged(facts, proof)),
});

const demandOf = ({ neededMm2, cpcMm2 }: ProtectiveProof): number =>
  neededMm2 === null ? Number.MAX_SAFE_INTEGER : neededMm2 / cpcMm2;

/** Of a circuit the cable whose conductor is asked for most is told. */
function judged(facts: Facts, proof: CircuitProof): CheckResult<Message> {
  const [worst] = proof.protective.toSorted((a, b) => demandOf(b) - demandOf(a));
  if (worst === undefined)
    return {
      outcome: 'advice',
      messageId: 'untold',
      subjectId: proof.circuit,
      origin: originOfUnproved(facts),
      values: { circuit: circuitName(facts, proof.circuit) },
    };
  return { subjectId: worst.leg, ...byFault(facts, worst) };
}

function byFault(facts: Facts, worst: ProtectiveProof): Omit<CheckResult<Message>, 'subjectId'> {
  const { neededMm2, cpcMm2, faultA, letThroughA2s, withstandA2s, leg } = worst;
  const values = { name: nameOf(facts, leg), fault: Math.round(faultA) };
  const isNew = facts.runs.some(({ id }) => id === leg);
  const origin = isNew ? 'scheme' : 'found';
  const byEnergy = { limit: Math.round(withstandA2s), unit: 'A²s', values };
  if (letThroughA2s !== null) {
    const actual = Math.round(letThroughA2s);
    return letThroughA2s <= withstandA2s
      ? { outcome: 'passes', messageId: 'byMaker', origin, actual, ...byEnergy }
      : { outcome: 'fails', messageId: 'overMaker', origin, actual, ...byEnergy };
  }
  if (neededMm2 === null) return { outcome: 'advice', messageId: 'noFigure', origin, ...byEnergy };
  const ceiling = worst.classCeilingA2s;
  if (neededMm2 > cpcMm2 && ceiling !== null && ceiling <= withstandA2s)
    return { outcome: 'advice', messageId: 'byClass', origin, actual: ceiling, ...byEnergy };
  if (neededMm2 > cpcMm2) return { outcome: 'advice', messageId: 'askMaker', origin, ...byEnergy };
  const actual = Math.round(neededMm2 * 100) / 100;
  return { outcome: 'passes', messageId: 'within', origin, actual, limit: cpcMm2, unit: 'mm²', values };
}
