import type { Job } from '#model/job.ts';
import { isGuess } from '../plan/is-guess.ts';
import { answerTo } from './answer.ts';
import { type CheckResult, rule } from './rule.ts';

/** The library's sum for having something sampled. */
export const ASBESTOS_SUM = 'asbestos-sampling';

/** Whether it has still to be looked at where the work is: the house may be old enough, and nobody saw that nothing is there. */
export function asbestosIsOpen({ site, answers }: Pick<Job, 'site' | 'answers'>): boolean {
  const isNewer = site.builtBefore2000 === false && !isGuess(site.certainty?.builtBefore2000);
  const answer = answers.find(({ question }) => question === 'asbestos');
  const isAnswered = answer !== undefined && answer.value !== null && !isGuess(answer.certainty);
  return !isNewer && !isAnswered && answer?.value !== 'suspected';
}

/** Whether something is said to be suspected there, so that it is sampled before the work. */
export const asbestosIsSuspected = ({ answers }: Pick<Job, 'answers'>): boolean =>
  answers.some(
    ({ question, value, certainty }) =>
      question === 'asbestos' && value === 'suspected' && certainty !== 'unknown',
  );

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
