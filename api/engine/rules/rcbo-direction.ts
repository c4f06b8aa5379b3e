import type { Facts } from './facts.ts';
import { fittedRcds } from './fitted-devices.ts';
import { otherSourcesOf } from './other-sources.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'check' | 'single' | 'assumed' | 'unknown';

/** Devices suit the directions in which power may flow. */
export const rcboDirection = rule<Message>({
  id: 'SU1',
  title: 'RCBOs and the direction of power',
  source: 'BS 7671:2018+A3:2024 530.3.201',
  messages: {
    check: 'The house has other sources ({actual}), so power may flow both ways through the new device.',
    single: 'No source beside the distributor’s is recorded, so the device sees power one way only.',
    assumed: 'That the house has no other sources (solar, battery, vehicle) is assumed, and was not seen.',
    unknown: 'Whether the house has other sources (solar, battery, vehicle) is not known.',
  },
  remedies: {
    check:
      'Choose a device marked for both directions, or show that its circuit cannot be fed from its load side.',
    assumed: 'Look at the intake for labels of dual supply.',
    unknown: 'Ask, and look at the intake for labels of dual supply.',
  },
  couldFail: false,
  check: (facts) =>
    fittedRcds(facts).map(({ id }) => ({ subjectId: id, origin: 'scheme' as const, ...judged(facts) })),
});

function judged(facts: Facts): Omit<CheckResult<Message>, 'subjectId' | 'origin'> {
  const { state, words } = otherSourcesOf(facts);
  if (words !== '') return { outcome: 'decide', messageId: 'check', actual: words };
  return state === 'known'
    ? { outcome: 'passes', messageId: 'single' }
    : { outcome: 'not-proven', messageId: state };
}
