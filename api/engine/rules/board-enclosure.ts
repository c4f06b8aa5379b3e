import { exchangesBoard } from './fitted-devices.ts';
import { rule } from './rule.ts';

/** A consumer unit that does not burn is asked for when one is fitted, not when a point is added. */
export const boardEnclosure = rule({
  id: 'PR3',
  title: 'Enclosure of the board',
  source: 'BS 7671 421.1.201',
  applies: ({ scheme }) => scheme !== null,
  messages: {
    notTriggered:
      'Points are added and the consumer unit stays: its enclosure need not be exchanged for that.',
    newBoard:
      'The new consumer unit, and any enclosure beside it, is to be of a material that does not burn.',
  },
  remedies: { newBoard: 'Order a unit in a steel enclosure.' },
  couldFail: false,
  check: (facts) => [
    exchangesBoard(facts)
      ? { outcome: 'advice', messageId: 'newBoard', subjectId: 'supply', origin: 'scheme' }
      : { outcome: 'passes', messageId: 'notTriggered', subjectId: 'supply', origin: 'scheme' },
  ],
});
