import { answerTo } from './answer.ts';
import { type CheckResult, rule } from './rule.ts';

/** Who does not own the building asks its owner first. */
export const consent = rule({
  id: 'PR4',
  title: 'Consent of the owner',
  source: 'common practice',
  messages: {
    given: 'The owner’s consent is recorded.',
    missing: 'The customer is a {actual}: the owner’s consent is not recorded.',
    unknown: 'Whether the customer owns the home is not known.',
  },
  remedies: {
    missing: 'Ask for consent in writing before starting.',
    unknown: 'Ask who owns the home.',
  },
  couldFail: false,
  check: (facts): readonly CheckResult<'given' | 'missing' | 'unknown'>[] => {
    const { tenure } = facts.job.site;
    const subject = { subjectId: 'site', origin: 'found' } as const;
    if (tenure === 'owner') return [];
    if (answerTo(facts, 'consent') === 'given')
      return [{ ...subject, outcome: 'passes', messageId: 'given' }];
    return tenure === undefined
      ? [{ ...subject, outcome: 'advice', messageId: 'unknown' }]
      : [{ ...subject, outcome: 'advice', messageId: 'missing', actual: tenure }];
  },
});
