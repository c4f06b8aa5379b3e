import { bondCertainty, bondsNotTold, isBondTold, type Service } from './bonds.ts';
import type { Facts } from './facts.ts';
import { renewsBond, serviceWords } from './fitted-devices.ts';
import { type CheckResult, rule } from './rule.ts';

type Message =
  | 'seen'
  | 'missing'
  | 'missingOther'
  | 'absent'
  | 'putRight'
  | 'nothingTold'
  | 'notTold'
  | 'assumed'
  | 'gasNotTold';

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
    absent: 'No bond is wanted for {service}: the house has none of metal.',
    nothingTold: 'Nothing is recorded of main bonds.',
    notTold: 'Nobody has told whether {service} has its main bond, or whether it wants one.',
    assumed: 'What is recorded of the main bond to {service} is assumed: it was not seen.',
    gasNotTold: 'There is gas in the house and nothing is recorded of its main bond.',
  },
  remedies: {
    missing:
      'Stop. Fit the bond first, within 600 mm of the meter’s outlet and before any branch, and tell the customer in writing.',
    missingOther: 'Find out whether it is an extraneous part; bond it if so.',
    notTold: 'Look for the clamp where it enters; where there is none of metal, record that.',
    assumed: 'Look for the clamp where it enters.',
    nothingTold: 'Look for the clamps at water, gas, oil and steel.',
    gasNotTold: 'Look for the clamp at the gas meter.',
  },
  couldFail: true,
  check: (facts) => {
    const { supply } = facts.job;
    const absent = supply.absentServices ?? [];
    if (supply.bonding.length === 0 && absent.length === 0)
      return [{ ...open, messageId: 'nothingTold', subjectId: 'supply' }];
    return [
      ...supply.bonding.map(({ service, seen }) => judged(facts, service, seen)),
      ...absent.map((service) => judgedAbsent(facts, service)),
      ...untold(facts),
    ];
  },
});

/** Nobody looked: the gate stays shut until somebody has. */
const open = { outcome: 'not-proven', origin: 'found', stopGate: true } as const;

function judged(facts: Facts, service: Service, seen: boolean): CheckResult<Message> {
  const subject = subjectOf(service);
  const certainty = bondCertainty(facts.job.supply, service);
  if (certainty === 'unknown') return { ...subject, ...open, messageId: 'notTold' };
  // That one was missing is put right all the same, and that one is there has to be seen.
  if (certainty === 'assumed' && !(renewsBond(facts, service) && !seen))
    return { ...subject, ...open, messageId: 'assumed' };
  if (seen) return { ...subject, outcome: 'passes', messageId: 'seen' };
  if (renewsBond(facts, service)) return { ...subject, outcome: 'passes', messageId: 'putRight' };
  if (service === 'other') return { ...subject, outcome: 'decide', messageId: 'missingOther' };
  const fix = { kind: 'bond-upgrade', at: service } as const;
  return { ...subject, outcome: 'fails', messageId: 'missing', stopGate: true, fix };
}

/** A service that was said not to be there: held against what is drawn, and against who looked. */
function judgedAbsent(facts: Facts, service: Service): CheckResult<Message> {
  const subject = subjectOf(service);
  const certainty = bondCertainty(facts.job.supply, service);
  if (certainty === 'unknown') return { ...subject, ...open, messageId: 'notTold' };
  if (certainty === 'assumed') return { ...subject, ...open, messageId: 'assumed' };
  return service === 'gas' && hasGas(facts)
    ? { ...subject, ...open, messageId: 'gasNotTold' }
    : { ...subject, outcome: 'passes', messageId: 'absent' };
}

/** Water and gas of which nobody said anything, gas in other words where it is drawn. */
function untold(facts: Facts): readonly CheckResult<Message>[] {
  const { supply } = facts.job;
  return bondsNotTold(supply)
    .filter((service) => !isBondTold(supply, service))
    .map((service) => ({
      ...subjectOf(service),
      ...open,
      messageId: service === 'gas' && hasGas(facts) ? 'gasNotTold' : 'notTold',
    }));
}

/** A gas meter or pipe on the drawing. */
const hasGas = ({ plan }: Facts): boolean =>
  plan.fixtures.some(({ fixture }) => fixture.kind.startsWith('gas-'));

const subjectOf = (service: Service) =>
  ({
    subjectId: `supply/bond-${service}`,
    origin: 'found',
    values: { service: serviceWords(service) },
  }) as const;
