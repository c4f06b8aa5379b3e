import type { Circuit } from '#model/installation.ts';
import { assessedDemandA, type HouseholdLoad } from '../proof/diversity.ts';
import { answerTo } from './answer.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'unknown' | 'over' | 'within' | 'notAssessed';

/** The supply bears what is added. */
export const mainFuse = rule<Message>({
  id: 'SU2',
  title: 'Demand on the main fuse',
  source: 'BS 7671 132.16, 311.1; diversity by IET On-Site Guide Appendix A',
  messages: {
    unknown: 'The rating of the main fuse is not known.',
    over: 'The assessed demand is {actual} A, above the main fuse of {limit} A.',
    within: 'The assessed demand is {actual} A, within the main fuse of {limit} A.',
    notAssessed:
      'The main fuse is {limit} A; the demand with the new points was not assessed. The recorded circuits alone come to {recorded} A with the usual diversity.',
  },
  remedies: {
    unknown: 'Read the cut-out’s label, or ask the distributor.',
    over: 'Ask the distributor about a larger supply, or take load off.',
    notAssessed: 'Assess the demand: outlets add little, fixed heaters their whole rating.',
  },
  couldFail: false,
  check: (facts) => [{ subjectId: 'supply', origin: 'found', ...judged(facts) }],
});

/** By which rule of diversity the circuits of a use count. */
const loadUses: Readonly<Record<Circuit['use'], HouseholdLoad['use']>> = {
  sockets: 'standard-circuit',
  kitchen: 'standard-circuit',
  cooker: 'cooker',
  heating: 'heating',
  other: 'undiversified',
};

/** What the circuits with a known device come to: those that nobody recorded are not in it. */
function recordedDemandA({ proposed }: Facts): number {
  const loads = proposed.circuits.flatMap(({ device, circuit }): readonly HouseholdLoad[] =>
    device === null ? [] : [{ use: loadUses[circuit?.use ?? 'sockets'], currentA: device.ratingA }],
  );
  return assessedDemandA(loads);
}

function judged(facts: Facts): Omit<CheckResult<Message>, 'subjectId' | 'origin'> {
  const fuseA = facts.job.supply.mainFuseA;
  if (fuseA === undefined) return { outcome: 'not-proven', messageId: 'unknown' };
  const demandA = answerTo(facts, 'maximum-demand');
  if (typeof demandA !== 'number')
    return {
      outcome: 'advice',
      messageId: 'notAssessed',
      limit: fuseA,
      unit: 'A',
      values: { recorded: Math.round(recordedDemandA(facts)) },
    };
  return demandA > fuseA
    ? { outcome: 'decide', messageId: 'over', ...figures(demandA, fuseA, 'A') }
    : { outcome: 'passes', messageId: 'within', ...figures(demandA, fuseA, 'A') };
}
