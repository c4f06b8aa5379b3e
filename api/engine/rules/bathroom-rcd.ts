import { ADDITIONAL_PROTECTION_MA, circuitRcd } from '../proof/rcd-cover.ts';
import { isUndrawnBathroom, toZone1Mm } from './bathroom.ts';
import type { Facts } from './facts.ts';
import { newAccessories } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'covered' | 'missing' | 'unknown' | 'assumedNone' | 'needed';

/** Circuits of a room with a bath or shower are behind an RCD. */
export const bathroomRcd = rule<Message>({
  id: 'PO8',
  title: 'RCD for rooms with a bath or shower',
  source: 'BS 7671 701.411.3.3',
  messages: {
    covered: 'The circuit that serves this room is behind an RCD of {limit} mA or less.',
    missing: 'The circuit that serves this room with a bath or shower has no RCD of {limit} mA.',
    unknown:
      'Whether the circuit that serves this room with a bath or shower has an RCD of {limit} mA is not known.',
    assumedNone:
      'It is assumed that the circuit that serves this room with a bath or shower has no RCD of {limit} mA: not proven.',
    needed:
      'Every low-voltage circuit that serves this room, or passes its zones 1 and 2, wants an RCD of {limit} mA.',
  },
  remedies: {
    missing: 'Put the circuit behind a 30 mA RCD, and look at the others of the room.',
    unknown: 'Look at the board, and at the other circuits of the room.',
    assumedNone:
      'Look at the board. If there is none: put the circuit behind a 30 mA RCD, and look at the others of the room.',
    needed: 'Put the circuit behind a 30 mA RCD, and look at the others of the room.',
  },
  couldFail: true,
  check: (facts) =>
    newAccessories(facts)
      .filter((accessory) => toZone1Mm(facts, accessory) !== null || isUndrawnBathroom(facts, accessory))
      .map(({ id }) => ({
        ...judged(facts, id),
        subjectId: id,
        origin: 'scheme',
        limit: ADDITIONAL_PROTECTION_MA,
        unit: 'mA',
      })),
});

/** By the RCD of the accessory's circuit; what no circuit reaches yet can only be advised on. */
function judged(facts: Facts, id: string): Pick<CheckResult<Message>, 'outcome' | 'messageId'> {
  const circuitId = [...facts.shapes.values()].find(({ places }) =>
    places.some(({ nodeId }) => nodeId === id),
  )?.circuitId;
  if (circuitId === undefined) return { outcome: 'advice', messageId: 'needed' };
  switch (circuitRcd(facts, circuitId).state) {
    case 'covered':
      return { outcome: 'passes', messageId: 'covered' };
    case 'none':
      return { outcome: 'fails', messageId: 'missing' };
    case 'assumed-none':
      return { outcome: 'not-proven', messageId: 'assumedNone' };
    case 'unknown':
      return { outcome: 'not-proven', messageId: 'unknown' };
  }
}
