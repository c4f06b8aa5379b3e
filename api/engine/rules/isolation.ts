import { answerTo } from './answer.ts';
import { type CheckResult, rule } from './rule.ts';

/** The work is done dead: everything that may feed the board can be shut off and locked. */
export const isolation = rule({
  id: 'SU6',
  title: 'Every source can be isolated before work',
  source: 'Electricity at Work Regulations 1989, 14; HSE GS38; common practice',
  messages: {
    otherSources:
      'The house has other sources ({actual}): isolating the main switch alone does not make the board dead.',
    distributor: 'The board can only be isolated at the distributor’s fuse.',
  },
  remedies: {
    otherSources: 'Isolate and lock each source, then prove dead between all conductors.',
    distributor: 'Arrange for the distributor or the supplier to isolate, before the day.',
  },
  couldFail: false,
  check: (facts) => {
    const subject = { subjectId: 'supply', origin: 'found', outcome: 'advice' } as const;
    const said: CheckResult<'otherSources' | 'distributor'>[] = [];
    const sources = [...facts.job.supply.otherSources].sort();
    if (sources.length > 0) said.push({ ...subject, messageId: 'otherSources', actual: sources.join(', ') });
    if (answerTo(facts, 'isolation') === 'distributor') said.push({ ...subject, messageId: 'distributor' });
    return said;
  },
});
