import type { Supply } from '#model/installation.ts';
import { isGuess } from '../plan/is-guess.ts';
import type { Facts } from './facts.ts';
import { renewsBond, serviceWords } from './fitted-devices.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'seen' | 'missing' | 'missingOther' | 'putRight' | 'nothingTold' | 'gasNotTold';
type Service = Supply['bonding'][number]['service'];

/** Nothing is added while a service that wants a main bond has none. */
export const mainBond = rule<Message>({
  id: 'ST2',
  title: 'Main bonding of services',
  source: 'BS 7671 411.3.1.2, 132.16',
  messages: {
    seen: 'The bond to {service} was seen.',
    missing:
      'No main bond to {service} was found. It is required where the pipe or frame is metal and enters from outside.',
    missingOther: 'No main bond to another service was found; whether it wants one is to be decided.',
    putRight: 'No main bond to {service} was found; the scheme fits one before anything is added.',
    nothingTold: 'Nothing is recorded of main bonds.',
    gasNotTold: 'There is gas in the house and nothing is recorded of its main bond.',
  },
  remedies: {
    missing:
      'Stop. Fit the bond first, within 600 mm of the meter’s outlet and before any branch, and tell the customer in writing.',
    missingOther: 'Find out whether it is an extraneous part; bond it if so.',
    nothingTold: 'Look for the clamps at water, gas, oil and steel.',
    gasNotTold: 'Look for the clamp at the gas meter.',
  },
  couldFail: true,
  check: (facts) => {
    const { bonding, certainty } = facts.job.supply;
    if (bonding.length === 0 || isGuess(certainty?.bonding))
      return [
        {
          outcome: 'not-proven',
          messageId: 'nothingTold',
          subjectId: 'supply',
          origin: 'found',
          stopGate: true,
        },
      ];
    return [...bonding.map((bond) => judged(facts, bond.service, bond.seen)), ...untoldGas(facts)];
  },
});

function judged(facts: Facts, service: Service, seen: boolean): CheckResult<Message> {
  const subject = {
    subjectId: bondId(service),
    origin: 'found',
    values: { service: serviceWords(service) },
  } as const;
  if (seen) return { ...subject, outcome: 'passes', messageId: 'seen' };
  if (renewsBond(facts, service)) return { ...subject, outcome: 'passes', messageId: 'putRight' };
  if (service === 'other') return { ...subject, outcome: 'decide', messageId: 'missingOther' };
  const fix = { kind: 'bond-upgrade', at: service } as const;
  return { ...subject, outcome: 'fails', messageId: 'missing', stopGate: true, fix };
}

/** A gas meter or pipe on the drawing, and no word of its bond. */
function untoldGas({ plan, job }: Facts): readonly CheckResult<Message>[] {
  const hasGas = plan.fixtures.some(({ fixture }) => fixture.kind.startsWith('gas-'));
  if (!hasGas || job.supply.bonding.some(({ service }) => service === 'gas')) return [];
  return [
    {
      outcome: 'not-proven',
      messageId: 'gasNotTold',
      subjectId: bondId('gas'),
      origin: 'found',
      stopGate: true,
    },
  ];
}

function bondId(service: Service): string {
  return `supply/bond-${service}`;
}
