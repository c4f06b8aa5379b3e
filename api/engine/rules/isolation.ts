import { answerTo } from './answer.ts';
import { otherSourcesOf } from './other-sources.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'otherSources' | 'both' | 'distributor' | 'assumed' | 'unknown';

/** The work is done dead: everything that may feed the board can be shut off and locked. */
export const isolation = rule<Message>({
  id: 'SU6',
  title: 'Isolation of every source',
  source: 'Electricity at Work Regulations 1989, 14; HSE GS38; common practice',
  messages: {
    otherSources:
      'The house has other sources ({actual}): isolating the main switch alone does not make the board dead.',
    both: 'The house has other sources ({actual}), and the board can only be isolated at the distributor’s fuse.',
    distributor: 'The board can only be isolated at the distributor’s fuse.',
    assumed:
      'That no solar, battery or vehicle feeds the house is assumed: isolating the main switch alone may not make the board dead.',
    unknown:
      'Whether solar, a battery or a vehicle feeds the house is not known: isolating the main switch alone may not make the board dead.',
  },
  remedies: {
    otherSources: 'Isolate and lock each source, then prove dead between all conductors.',
    both: 'Arrange for the distributor or the supplier to isolate, before the day; isolate and lock each other source, then prove dead between all conductors.',
    distributor: 'Arrange for the distributor or the supplier to isolate, before the day.',
    assumed: 'Look at the intake for labels of dual supply before the day.',
    unknown: 'Ask, and look at the intake for labels of dual supply before the day.',
  },
  couldFail: false,
  check: (facts): readonly CheckResult<Message>[] => {
    const { state, words } = otherSourcesOf(facts);
    const isDistributors = answerTo(facts, 'isolation') === 'distributor';
    const subject = { subjectId: 'supply', origin: 'found', outcome: 'advice' } as const;
    if (words !== '')
      return [{ ...subject, messageId: isDistributors ? 'both' : 'otherSources', actual: words }];
    return [
      ...(isDistributors ? [{ ...subject, messageId: 'distributor' } as const] : []),
      ...(state === 'known' ? [] : [{ ...subject, outcome: 'not-proven', messageId: state } as const]),
    ];
  },
});
