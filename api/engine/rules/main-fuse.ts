import { answerTo } from './answer.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'unknown' | 'over' | 'within' | 'notAssessed';

/** The supply bears what is added. */
export const mainFuse = rule<Message>({
  id: 'SU2',
  title: 'The main fuse bears the demand',
  source: 'BS 7671 132.16, 311.1',
  messages: {
    unknown: 'The rating of the main fuse is not known.',
    over: 'The assessed demand is {actual} A, above the main fuse of {limit} A.',
    within: 'The assessed demand is {actual} A, within the main fuse of {limit} A.',
    notAssessed: 'The main fuse is {limit} A; the demand with the new points was not assessed.',
  },
  remedies: {
    unknown: 'Read the cut-out’s label, or ask the distributor.',
    over: 'Ask the distributor about a larger supply, or take load off.',
    notAssessed: 'Assess the demand: outlets add little, fixed heaters their whole rating.',
  },
  couldFail: false,
  check: (facts) => [{ subjectId: 'supply', origin: 'found', ...judged(facts) }],
});

function judged(facts: Facts): Omit<CheckResult<Message>, 'subjectId' | 'origin'> {
  const fuseA = facts.job.supply.mainFuseA;
  if (fuseA === undefined) return { outcome: 'not-proven', messageId: 'unknown' };
  const demandA = answerTo(facts, 'maximum-demand');
  if (typeof demandA !== 'number')
    return { outcome: 'advice', messageId: 'notAssessed', limit: fuseA, unit: 'A' };
  return demandA > fuseA
    ? { outcome: 'decide', messageId: 'over', ...figures(demandA, fuseA, 'A') }
    : { outcome: 'passes', messageId: 'within', ...figures(demandA, fuseA, 'A') };
}
