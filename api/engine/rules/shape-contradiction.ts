import type { CircuitShape, CircuitShapeName } from '../circuit/shape.ts';
import type { Facts } from './facts.ts';
import { type PlateContradiction, plateContradictions } from './plate-against-legs.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, touchedShapes } from './wiring.ts';

const shapeWords: Readonly<Record<CircuitShapeName, string>> = {
  ring: 'a ring',
  radial: 'a radial',
  'broken-ring': 'a broken ring',
  lollipop: 'a loop that does not pass the board',
  interconnected: 'one of several loops or circuits that are joined',
  unknown: 'one that cannot be told',
};

type Message = 'contradicts' | PlateContradiction['messageId'];

/** What the survey calls a circuit or saw at a plate, and what the legs make of it. */
export const shapeContradiction = rule<Message>({
  id: 'RG2',
  title: 'Survey against legs',
  source: 'common practice',
  messages: {
    contradicts: '{circuit} is called a {limit}, but its legs make it {made}. The legs are followed here.',
    fewer: 'At {point} the plate showed {seen}, and the legs give {byLegs}. The legs are followed here.',
    more: 'At {point} the plate showed {seen}, and the legs give {byLegs}: a spur from it may not be recorded. It counts as being there already.',
    calledSpur:
      '{point} was taken for a spur at the plate, and the legs put it in the ring. The legs are followed here.',
    calledRing:
      '{point} was taken for a point of the ring at the plate, and the legs put it off the ring. The legs are followed here.',
  },
  remedies: {
    contradicts: 'Look again: either a leg is missing from the survey, or the label is wrong.',
    fewer: 'Look again, dead and proved so: a leg drawn to this point ends elsewhere, or a cable was missed.',
    more: 'Trace the further cable before anything is joined on here, and record its leg.',
    calledSpur: 'Prove by readings at the linked ends which it is before joining on here.',
    calledRing: 'Prove by readings at the linked ends which it is before joining on here.',
  },
  couldFail: false,
  check: (facts) =>
    touchedShapes(facts).flatMap((shape): readonly CheckResult<Message>[] => [
      ...ofCircuit(facts, shape),
      ...plateContradictions(facts, shape.circuitId).map(ofPlate),
    ]),
});

function ofCircuit(
  facts: Facts,
  { circuitId, contradicts, claimed, shape }: CircuitShape,
): readonly CheckResult<Message>[] {
  if (!contradicts || claimed === null) return [];
  const head = { subjectId: circuitId, origin: 'found', actual: shape, limit: claimed } as const;
  const values = { circuit: circuitName(facts, circuitId), made: shapeWords[shape], limit: claimed };
  return [{ ...head, outcome: 'decide', messageId: 'contradicts', values }];
}

function ofPlate({ point, messageId, seen, byLegs, words }: PlateContradiction): CheckResult<Message> {
  const head = { subjectId: point.id, origin: 'found', values: { point: point.label, ...words } } as const;
  const numbers = seen === null ? {} : { actual: seen, limit: byLegs, unit: 'cables' };
  if (messageId === 'more') return { ...head, ...numbers, outcome: 'not-proven', messageId };
  return messageId === 'fewer'
    ? { ...head, ...numbers, outcome: 'decide', messageId }
    : { ...head, outcome: 'decide', messageId };
}
