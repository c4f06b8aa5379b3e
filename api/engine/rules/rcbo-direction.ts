import type { Facts } from './facts.ts';
import { fittedRcds } from './fitted-devices.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'check' | 'single' | 'unknown';

/** Devices suit the directions in which power may flow. */
export const rcboDirection = rule<Message>({
  id: 'SU1',
  title: 'RCBOs and the direction of power',
  source: 'BS 7671:2018+A3:2024 530.3.201',
  messages: {
    check: 'The house has other sources ({actual}), so power may flow both ways through the new device.',
    single: 'No source beside the distributor’s is recorded, so the device sees power one way only.',
    unknown: 'Whether the house has other sources (solar, battery, vehicle) is not known.',
  },
  remedies: {
    check:
      'Choose a device marked for both directions, or show that its circuit cannot be fed from its load side.',
    unknown: 'Ask, and look at the intake for labels of dual supply.',
  },
  couldFail: false,
  check: (facts) =>
    fittedRcds(facts).map(({ id }) => ({ subjectId: id, origin: 'scheme' as const, ...judged(facts) })),
});

function judged({ job }: Facts): Omit<CheckResult<Message>, 'subjectId' | 'origin'> {
  const { otherSources, certainty } = job.supply;
  if (otherSources.length > 0)
    return { outcome: 'decide', messageId: 'check', actual: [...otherSources].sort().join(', ') };
  return certainty?.otherSources === 'unknown'
    ? { outcome: 'not-proven', messageId: 'unknown' }
    : { outcome: 'passes', messageId: 'single' };
}
