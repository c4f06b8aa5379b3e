import { answerTo } from './answer.ts';
import { type CheckResult, rule } from './rule.ts';

/** Buildings from before 2000 may hold asbestos where one drills. */
export const asbestos = rule({
  id: 'SC3',
  title: 'Asbestos',
  source: 'Control of Asbestos Regulations 2012; HSE guidance',
  applies: ({ job }) => job.site.builtBefore2000 !== false,
  messages: {
    clear: 'A survey found no asbestos where the work is.',
    possible:
      'Built before 2000: textured coatings, boards behind meters, old fuse carriers and floor tiles may hold asbestos.',
    ageUnknown:
      'When the building was built is not known; before 2000, coatings, boards and tiles may hold asbestos.',
    suspected: 'Asbestos is suspected where the work is.',
  },
  remedies: {
    possible: 'Ask for a survey; stop at anything suspicious.',
    ageUnknown: 'Ask for the year; stop at anything suspicious.',
    suspected: 'Stop. Have it sampled before anything is drilled, lifted or moved.',
  },
  couldFail: false,
  check: (facts): readonly CheckResult<'clear' | 'possible' | 'ageUnknown' | 'suspected'>[] => {
    const subject = { subjectId: 'site', origin: 'found' } as const;
    const answer = answerTo(facts, 'asbestos');
    if (answer === 'surveyed-clear') return [{ ...subject, outcome: 'passes', messageId: 'clear' }];
    if (answer === 'suspected') return [{ ...subject, outcome: 'decide', messageId: 'suspected' }];
    const messageId = facts.job.site.builtBefore2000 === true ? 'possible' : 'ageUnknown';
    return [{ ...subject, outcome: 'advice', messageId }];
  },
});
