import { answerTo } from './answer.ts';
import type { Facts } from './facts.ts';
import { exchangesBoard } from './fitted-devices.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'fitted' | 'declined' | 'counted' | 'newBoard' | 'wanted' | 'offer';

/** Surge protection: asked about, decided with a new board. */
export const surge = rule<Message>({
  id: 'PR2',
  title: 'Surge protection',
  source: 'BS 7671:2018+A2:2022 443.4.1',
  messages: {
    fitted: 'Surge protection is recorded as fitted.',
    declined: 'The owner declines surge protection.',
    counted: 'The owner wants surge protection, and the new board has a device for it.',
    newBoard: 'A new board is to have surge protection unless the owner declines it; nobody recorded which.',
    wanted:
      'The owner wants surge protection. It is counted with a new board; for the board that stays nothing is counted.',
    offer:
      'Surge protection is asked for where an overvoltage endangers people or much money, and else unless the owner declines. No source says that added points call for it; in practice it comes with a new board.',
  },
  remedies: {
    newBoard: 'Ask, and record whether the owner wants it or declines.',
    wanted:
      'Ask the board’s maker for a device that suits it, and price it as work that is not on the drawing.',
    offer: 'Offer it; keep surge devices off the 500 V insulation test.',
  },
  couldFail: false,
  check: (facts) => [{ subjectId: 'supply', ...judged(facts) }],
});

function judged(facts: Facts): Omit<CheckResult<Message>, 'subjectId'> {
  const answer = answerTo(facts, 'surge-protection');
  if (answer === 'fitted') return { outcome: 'passes', messageId: 'fitted', origin: 'found' };
  if (answer === 'declined') return { outcome: 'passes', messageId: 'declined', origin: 'found' };
  if (answer === 'wanted')
    return exchangesBoard(facts)
      ? { outcome: 'passes', messageId: 'counted', origin: 'scheme' }
      : { outcome: 'advice', messageId: 'wanted', origin: 'found' };
  return exchangesBoard(facts)
    ? { outcome: 'decide', messageId: 'newBoard', origin: 'scheme' }
    : { outcome: 'advice', messageId: 'offer', origin: 'found' };
}
