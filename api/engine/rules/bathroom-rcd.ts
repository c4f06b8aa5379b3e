import { isUndrawnBathroom, toZone1Mm } from './bathroom.ts';
import { newAccessories } from './placed.ts';
import { rule } from './rule.ts';

/** Circuits of a room with a bath or shower are behind an RCD. */
export const bathroomRcd = rule({
  id: 'PO8',
  title: 'Circuits of a room with a bath or shower have 30 mA RCD protection',
  source: 'BS 7671 701.411.3.3',
  messages: {
    needed:
      'Every low-voltage circuit that serves this room, or passes its zones 1 and 2, wants an RCD of {limit} mA.',
  },
  remedies: { needed: 'Put the circuit behind a 30 mA RCD, and look at the others of the room.' },
  couldFail: false,
  check: (facts) =>
    newAccessories(facts)
      .filter((accessory) => toZone1Mm(facts, accessory) !== null || isUndrawnBathroom(facts, accessory))
      .map(({ id }) => ({
        outcome: 'advice',
        messageId: 'needed',
        subjectId: id,
        origin: 'scheme',
        limit: 30,
        unit: 'mA',
      })),
});
