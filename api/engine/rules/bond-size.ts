import type { Supply } from '#model/installation.ts';
import { type BondBasis, leastBond } from '../connections/least-bond.ts';
import { isGuess } from '../plan/is-guess.ts';
import { bondCertainty } from './bonds.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { renewsBond, serviceWords } from './fitted-devices.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'enough' | 'small' | 'sizeUnknown' | 'putRight';
type Bond = Supply['bonding'][number];

/** Main bonds that are there are thick enough. */
export const bondSize = rule<Message>({
  id: 'SU3',
  title: 'Size of main bonds',
  source: 'BS 7671 544.1.1, Table 54.8',
  messages: {
    enough: 'The bond to {service} is {actual} mm²: at least {limit} mm² is asked for, {basis}.',
    small:
      'The bond to {service} is {actual} mm²: at least {limit} mm² is asked for today, {basis}. Sources disagree: a sound bond that met the rules of its day may stay by some guidance.',
    sizeUnknown: 'The size of the bond to {service}, or the kind of earthing, was not seen.',
    putRight: 'The scheme renews the bond to {service}.',
  },
  remedies: {
    small: 'Renew the bond; else record why it may stay.',
    sizeUnknown: 'Look at the clamp and measure the conductor.',
  },
  couldFail: false,
  check: (facts) => facts.job.supply.bonding.filter(({ seen }) => seen).map((bond) => judged(facts, bond)),
});

function judged(facts: Facts, { service, mm2 }: Bond): CheckResult<Message> {
  const subject = { subjectId: `supply/bond-${service}`, origin: 'found' } as const;
  if (renewsBond(facts, service))
    return {
      ...subject,
      outcome: 'passes',
      messageId: 'putRight',
      values: { service: serviceWords(service) },
    };
  const least = leastBond(facts.job.supply);
  if (mm2 === undefined || least === null || isGuess(bondCertainty(facts.job.supply, service)))
    return {
      ...subject,
      outcome: 'not-proven',
      messageId: 'sizeUnknown',
      values: { service: serviceWords(service) },
    };
  const basis = basisWords(least.by, facts.job.supply.earthingMm2);
  const numbers = figures(mm2, least.mm2, 'mm²', { service: serviceWords(service), basis });
  return mm2 >= least.mm2
    ? { ...subject, outcome: 'passes', messageId: 'enough', ...numbers }
    : {
        ...subject,
        outcome: 'decide',
        messageId: 'small',
        ...numbers,
        fix: { kind: 'bond-upgrade', at: service },
      };
}

/** Why so much is asked for: a figure of 8 mm², which no cable has, says nothing by itself. */
function basisWords(by: BondBasis, earthingMm2 = 0): string {
  const earthing = `the earthing conductor of ${earthingMm2} mm²`;
  const said: Readonly<Record<BondBasis, string>> = {
    pme: 'the table’s least with PME',
    half: `half ${earthing}`,
    least: `the least of all, half ${earthing} being less`,
    most: `the most that is ever asked for, half ${earthing} being more`,
  };
  return said[by];
}
