import { isOutdoors } from './outdoor.ts';
import { newAccessories } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

/** Accessories outside are made for the weather and behind an RCD. */
export const outdoorEnclosure = rule({
  id: 'PO9',
  title: 'Accessories outside',
  source: 'BS 7671 522.3, 411.3.3; the IP figure is common practice',
  messages: {
    weatherproof: 'Outside, in an enclosure of IP66, behind an RCD of 30 mA.',
    unknown:
      'Outside, and no weatherproof enclosure is named: IP66 is usual in the trade, IP44 the least against splashes. An RCD of 30 mA is asked for.',
  },
  remedies: {
    weatherproof: 'See that the circuit’s RCD is there and tested.',
    unknown: 'Choose an IP66 accessory and mark it so.',
  },
  couldFail: false,
  check: (facts) =>
    newAccessories(facts)
      .filter((accessory) => isOutdoors(facts, accessory))
      .map(({ id, features }): CheckResult<'weatherproof' | 'unknown'> => {
        const made = features.includes('ip66');
        return {
          outcome: made ? 'advice' : 'decide',
          messageId: made ? 'weatherproof' : 'unknown',
          subjectId: id,
          origin: 'scheme',
          limit: 'IP66',
        };
      }),
});
