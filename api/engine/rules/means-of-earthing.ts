import { answerTo } from './answer.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'absent' | 'unknown' | 'assumed' | 'electrode' | 'present';

/** Nothing is added to an installation without an earth. */
export const meansOfEarthing = rule<Message>({
  id: 'ST1',
  title: 'Means of earthing',
  source: 'BS 7671 132.16, 411.3.1',
  messages: {
    absent: 'No means of earthing was found: a fault would not disconnect.',
    unknown: 'The kind of earthing is not known.',
    assumed: 'The earthing is assumed to be {actual}: it was not seen.',
    electrode: 'The earthing is by an electrode (TT): disconnection rests on RCDs.',
    present: 'The earthing is {actual}.',
  },
  remedies: {
    absent: 'Stop. Tell the customer in writing, and have an earth provided first.',
    unknown: 'Look at the intake and measure the external loop.',
    assumed: 'Look at the intake and measure the external loop.',
  },
  couldFail: true,
  check: (facts) => [{ subjectId: 'supply', origin: 'found', ...judged(facts) }],
});

function judged(facts: Facts): Omit<CheckResult<Message>, 'subjectId' | 'origin'> {
  if (answerTo(facts, 'means-of-earthing') === 'absent')
    return { outcome: 'fails', messageId: 'absent', stopGate: true };
  const { earthing, certainty } = facts.job.supply;
  if (earthing === undefined || certainty?.earthing === 'unknown')
    return { outcome: 'not-proven', messageId: 'unknown', stopGate: true };
  if (certainty?.earthing === 'assumed')
    return { outcome: 'not-proven', messageId: 'assumed', stopGate: true, actual: earthing };
  return { outcome: 'passes', messageId: earthing === 'TT' ? 'electrode' : 'present', actual: earthing };
}
