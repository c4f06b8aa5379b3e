import type { Facts } from './facts.ts';
import { fixturesNear, isSocket, newAccessories, type PlacedAccessory, plateToFixtureMm } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

/** What stands under a worktop is lower than this, mm. Common practice, no source. */
const UNDER_WORKTOP_MM = 850;

/** A unit drawn up to a wall may leave this much between its outline and the plate, mm. Common practice, no source. */
const AGAINST_MM = 50;

type Message = 'behind' | 'unswitched';

/** An appliance can be parted from its supply without pulling it out. */
export const applianceIsolation = rule<Message>({
  id: 'PO10',
  title: 'Isolation of appliances',
  source: 'BS 7671 132.10, 537.3; IET guide to the Building Regulations',
  messages: {
    behind:
      'The outlet stands low behind a worktop, an oven or a cupboard: once the appliance is in, it may not be reached.',
    unswitched: 'The fixed load is fed without a switch at its unit: its means of isolation is not named.',
  },
  remedies: {
    behind:
      'Set it beside the appliance in the next cupboard, or feed it through a switched unit above the worktop.',
    unswitched:
      'Fit a switched unit, or name the switch that isolates the load; leave cold appliances and alarms safe from switching off by mistake.',
  },
  couldFail: false,
  check: (facts) =>
    newAccessories(facts).flatMap<CheckResult<Message>>((accessory) => {
      const subject = { subjectId: accessory.id, origin: 'scheme', outcome: 'advice' } as const;
      if (isBehindAppliance(facts, accessory)) return [{ ...subject, messageId: 'behind' }];
      if (isUnswitchedLoad(facts, accessory)) return [{ ...subject, messageId: 'unswitched' }];
      return [];
    }),
});

function isBehindAppliance(facts: Facts, accessory: PlacedAccessory): boolean {
  if (!isSocket(accessory) && accessory.kind !== 'flex-outlet') return false;
  if (accessory.position.heightMm >= UNDER_WORKTOP_MM) return false;
  return fixturesNear(facts, accessory, ['worktop', 'oven', 'cupboard']).some(
    (fixture) => plateToFixtureMm(facts, accessory, fixture) < AGAINST_MM,
  );
}

function isUnswitchedLoad(facts: Facts, { id }: PlacedAccessory): boolean {
  const point = facts.plan.pointById.get(id);
  return point?.kind === 'fused-unit' && point.load?.fixed === true && point.unit?.switched === false;
}
