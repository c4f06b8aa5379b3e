import { answerTo } from './answer.ts';
import type { Facts } from './facts.ts';
import { exchangesBoard } from './fitted-devices.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'unsafe' | 'putRight' | 'sound' | 'worn' | 'unknown';

/** Nothing is added to a board that is dangerous. */
export const unsafeBoard = rule<Message>({
  id: 'ST3',
  title: 'State of the board',
  source: 'BS 7671 132.16, 134.1',
  messages: {
    unsafe: 'The board or the intake was found unsafe.',
    putRight: 'The board was found unsafe; the scheme exchanges it.',
    sound: 'The board was found sound.',
    worn: 'The board is old or worn, not dangerous.',
    unknown: 'The state of the board was not recorded.',
  },
  remedies: {
    unsafe:
      'Stop. Tell the customer in writing, and the distributor where it is theirs; mend or exchange it first.',
    worn: 'Record it among the comments on what was found.',
    unknown: 'Open the board and look before adding anything.',
  },
  couldFail: true,
  check: (facts) => {
    const boards = new Set(
      facts.circuitIds.flatMap(
        (id) => facts.proposed.circuits.find((circuit) => circuit.id === id)?.board?.id ?? [],
      ),
    );
    return [...boards].sort().map((id) => ({ subjectId: id, origin: 'found', ...judged(facts, id) }));
  },
});

function judged(facts: Facts, boardId: string): Omit<CheckResult<Message>, 'subjectId' | 'origin'> {
  switch (answerTo(facts, 'board-condition')) {
    case 'unsafe':
      return exchangesBoard(facts, boardId)
        ? { outcome: 'passes', messageId: 'putRight' }
        : {
            outcome: 'fails',
            messageId: 'unsafe',
            stopGate: true,
            fix: { kind: 'new-board', at: boardId },
          };
    case 'sound':
      return { outcome: 'passes', messageId: 'sound' };
    case 'worn':
      return { outcome: 'advice', messageId: 'worn' };
    default:
      // Told as it is, but no gate: the board is looked at on the day, before anything is joined on.
      return { outcome: 'not-proven', messageId: 'unknown' };
  }
}
