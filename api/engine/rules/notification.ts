import { roomOfPosition } from '../plan/surroundings.ts';
import { isUndrawnBathroom, toZone1Mm, ZONE_2_MM, ZONES_TOP_MM } from './bathroom.ts';
import type { Facts } from './facts.ts';
import { exchangesBoard, newCircuitIds } from './fitted-devices.ts';
import { isOutdoors } from './outdoor.ts';
import { newAccessories } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

type Message =
  | 'notNeeded'
  | 'newCircuit'
  | 'newBoard'
  | 'specialLocation'
  | 'bathNotDrawn'
  | 'walesOlderList'
  | 'scotlandFlat'
  | 'scotlandTall'
  | 'scotlandHouse'
  | 'northernIreland';

/** Whether building control is told, by the nation's law. */
export const notification = rule<Message>({
  id: 'NT1',
  title: 'Notification of the work',
  source:
    'Building Regulations 2010 reg 12(6A), Approved Document P (England 2013; Wales 2006/2010 list); Building (Scotland) Regulations 2004 reg 5',
  applies: ({ scheme }) => scheme !== null,
  messages: {
    notNeeded: 'Adding points to a circuit here is not notifiable. A certificate is due all the same.',
    newCircuit: 'A new circuit is notifiable.',
    newBoard: 'Exchanging the consumer unit is notifiable.',
    specialLocation: 'Work in the special location round a bath or shower is notifiable ({actual}).',
    bathNotDrawn:
      'Work is in a bathroom whose bath and shower are not drawn ({actual}): whether it is notifiable is not told.',
    walesOlderList:
      'Work in a kitchen, bathroom or outside in Wales ({actual}). Sources disagree: the older list, which notifies these, seems to be still in force there (the stricter, kept); the list of 2013 in England does not.',
    scotlandFlat:
      'In Scotland, fixtures need no warrant, but for work in a flat or the like the sources do not agree.',
    scotlandTall:
      'In Scotland, rewiring in a house of more than two storeys needs a warrant; whether added points do is not settled.',
    scotlandHouse:
      'In Scotland, electrical work in a house of up to two storeys needs no warrant; it must still meet the building regulations.',
    northernIreland:
      'Northern Ireland has no notification of electrical work; BS 7671 is followed by contract.',
  },
  remedies: {
    newCircuit:
      'Notify: by self-certification, or the building control body (in England also a third-party certifier).',
    newBoard:
      'Notify: by self-certification, or the building control body (in England also a third-party certifier).',
    specialLocation:
      'Notify: by self-certification, or the building control body (in England also a third-party certifier).',
    bathNotDrawn: 'Draw the bath and the shower.',
    walesOlderList: 'Notify, or ask the building control body and record the answer.',
    scotlandFlat: 'Ask the verifier, or use an approved certifier of construction.',
    scotlandTall: 'Ask the verifier, or use an approved certifier of construction.',
  },
  couldFail: false,
  check: (facts) => [{ subjectId: facts.scheme?.id ?? 'site', origin: 'scheme', ...judged(facts) }],
});

/** Whether work is to be notified: it is, somebody has to be asked, or it is not. Where sources disagree, the stricter reading counts. */
export type Notified = 'due' | 'ask' | 'none';

const notifiedBy: Readonly<Record<Message, Notified>> = {
  notNeeded: 'none',
  newCircuit: 'due',
  newBoard: 'due',
  specialLocation: 'due',
  bathNotDrawn: 'ask',
  walesOlderList: 'due',
  scotlandFlat: 'ask',
  scotlandTall: 'ask',
  scotlandHouse: 'none',
  northernIreland: 'none',
};
const notifiedByMessage = new Map<string, Notified>(Object.entries(notifiedBy));

/** What a finding of the rule comes to; a message that it does not have has to be asked about. */
export const notifiedOf = ({ messageId }: { readonly messageId: string }): Notified =>
  notifiedByMessage.get(messageId) ?? 'ask';

/** Whether the scheme's work is to be notified. */
export const isNotified = (facts: Facts): boolean =>
  facts.scheme !== null && notifiedOf(judged(facts)) === 'due';

type Judgement = Omit<CheckResult<Message>, 'subjectId' | 'origin'>;

function judged(facts: Facts): Judgement {
  switch (facts.job.site.nation) {
    case 'northern-ireland':
      return { outcome: 'passes', messageId: 'northernIreland' };
    case 'scotland':
      return inScotland(facts);
    default:
      return inEnglandOrWales(facts);
  }
}

function inScotland({ job }: Facts): Judgement {
  if (job.site.premises !== 'house') return { outcome: 'decide', messageId: 'scotlandFlat' };
  return job.storeys.length > 2
    ? { outcome: 'decide', messageId: 'scotlandTall' }
    : { outcome: 'passes', messageId: 'scotlandHouse' };
}

function inEnglandOrWales(facts: Facts): Judgement {
  if (exchangesBoard(facts)) return { outcome: 'advice', messageId: 'newBoard' };
  if (newCircuitIds(facts).length > 0) return { outcome: 'advice', messageId: 'newCircuit' };
  const accessories = newAccessories(facts);
  const special = accessories.filter((accessory) => {
    const awayMm = toZone1Mm(facts, accessory);
    return awayMm !== null && awayMm < ZONE_2_MM && accessory.position.heightMm <= ZONES_TOP_MM;
  });
  if (special.length > 0) return { outcome: 'advice', messageId: 'specialLocation', actual: labels(special) };
  if (facts.job.site.nation === 'wales') {
    const listed = placesOnOlderList(facts);
    if (listed.length > 0)
      return { outcome: 'decide', messageId: 'walesOlderList', actual: listed.join(', ') };
  }
  const undrawn = accessories.filter((accessory) => isUndrawnBathroom(facts, accessory));
  if (undrawn.length > 0)
    return { outcome: 'not-proven', messageId: 'bathNotDrawn', actual: labels(undrawn) };
  return { outcome: 'passes', messageId: 'notNeeded' };
}

function labels(accessories: readonly { readonly label: string }[]): string {
  return accessories.map(({ label }) => label).join(', ');
}

/** Rooms of the older list that new accessories or the ends of new runs are in, and outside; by name, sorted. */
function placesOnOlderList(facts: Facts): readonly string[] {
  const outside = newAccessories(facts).some((accessory) => isOutdoors(facts, accessory)) ? ['outside'] : [];
  const ends = facts.runs.flatMap(({ from, to }) => [from.position, to.position]);
  const positions = [...ends, ...newAccessories(facts).map(({ position }) => position)];
  const rooms = positions.flatMap((position) => {
    const room = roomOfPosition(facts.plan, position);
    return room && ['kitchen', 'bathroom', 'outside'].includes(room.room.use) ? [room.room.name] : [];
  });
  return [...new Set([...rooms, ...outside])].sort();
}
