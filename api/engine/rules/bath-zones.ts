import { isUndrawnBathroom, toZone1Mm, ZONE_2_MM, ZONES_TOP_MM } from './bathroom.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { isSocket, newAccessories, type PlacedAccessory } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'outside' | 'inZone' | 'shaverInZone1' | 'outletInZone' | 'notDrawn';

/** Switches and fused units stand outside the zones of a bath or shower. */
export const bathZones = rule<Message>({
  id: 'PO7',
  title: 'Zones of a bath or shower',
  source: 'BS 7671 701.32, 701.512.3',
  messages: {
    outside: '{actual} mm from the edge of zone 1; the zones end at {limit} mm.',
    inZone: '{actual} mm from the edge of zone 1: within zone 1 or 2, where no switch or fused unit may be.',
    shaverInZone1: 'The shaver unit stands within zone 1.',
    outletInZone:
      '{actual} mm from the edge of zone 1: an outlet within the zones serves fixed equipment made for them only, IPX4 at least.',
    notDrawn: 'The room is a bathroom and no bath or shower is drawn, so its zones are not known.',
  },
  remedies: {
    inZone: 'Move it beyond 0.6 m, above 2.25 m, or out of the room.',
    shaverInZone1: 'Move it to zone 2, out of the direct spray, or beyond.',
    outletInZone: 'Move it out of the zones, or name the equipment and its enclosure.',
    notDrawn: 'Draw the bath and the shower.',
  },
  couldFail: true,
  check: (facts) =>
    newAccessories(facts)
      .filter((accessory) => !isSocket(accessory))
      .flatMap((accessory) => judged(facts, accessory)),
});

function judged(facts: Facts, accessory: PlacedAccessory): readonly CheckResult<Message>[] {
  const subject = { subjectId: accessory.id, origin: 'scheme' } as const;
  const awayMm = toZone1Mm(facts, accessory);
  if (awayMm === null)
    return isUndrawnBathroom(facts, accessory)
      ? [{ ...subject, outcome: 'not-proven', messageId: 'notDrawn' }]
      : [];
  const numbers = figures(awayMm, ZONE_2_MM, 'mm');
  if (awayMm >= ZONE_2_MM || accessory.position.heightMm > ZONES_TOP_MM)
    return [{ ...subject, outcome: 'passes', messageId: 'outside', ...numbers }];
  if (accessory.kind === 'flex-outlet' || accessory.kind === 'blank' || accessory.kind === 'joint')
    return [{ ...subject, outcome: 'decide', messageId: 'outletInZone', ...numbers }];
  if (accessory.kind === 'shaver')
    return awayMm === 0
      ? [{ ...subject, outcome: 'fails', messageId: 'shaverInZone1', ...numbers }]
      : [{ ...subject, outcome: 'passes', messageId: 'outside', ...numbers }];
  return [{ ...subject, outcome: 'fails', messageId: 'inZone', ...numbers }];
}
