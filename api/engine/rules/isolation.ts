import { answerTo } from './answer.ts';
import { type CheckResult, rule } from './rule.ts';

/** The work is done dead: everything that may feed the board can be shut off and locked. */
export const isolation = rule({
  id: 'SU6',
  title: 'Isolation of every source',
  source: 'Electricity at Work Regulations 1989, 14; HSE GS38; common practice',
  messages: {
    otherSources:
      'The house has other sources ({actual}): isolating the main switch alone does not make the board dead.',
    both: 'The house has other sources ({actual}), and the board can only be isolated at the distributor’s fuse.',
    distributor: 'The board can only be isolated at the distributor’s fuse.',
  },
  remedies: {
    otherSources: 'Isolate and lock each source, then prove dead between all conductors.',
    both: 'Arrange for the distributor or the supplier to isolate, before the day; isolate and lock each other source, then prove dead between all conductors.',
    distributor: 'Arrange for the distributor or the supplier to isolate, before the day.',
  },
  couldFail: false,
  check: (facts): readonly CheckResult<'otherSources' | 'both' | 'distributor'>[] => {
    const subject = { subjectId: 'supply', origin: 'found', outcome: 'advice' } as const;
    const sources = [...facts.job.supply.otherSources].sort().join(', ');
    const isDistributors = answerTo(facts, 'isolation') === 'distributor';
    if (sources === '') return isDistributors ? [{ ...subject, messageId: 'distributor' }] : [];
    return [{ ...subject, messageId: isDistributors ? 'both' : 'otherSources', actual: sources }];
  },
});
