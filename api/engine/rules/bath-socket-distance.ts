import { isUndrawnBathroom, toZone1Mm } from './bathroom.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { foundAccessories, isSocket, newAccessories, type PlacedAccessory } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

/** From the edge of zone 1 to a socket-outlet, level, mm. Source: BS 7671:2018+A2:2022 701.512.3. */
export const BATH_SOCKET_MM = 2500;
/** The same before Amendment 2. Source: BS 7671:2018 701.512.3. */
export const BATH_SOCKET_BEFORE_A2_MM = 3000;

type Message = 'far' | 'disputed' | 'near' | 'notDrawn';

/** Socket-outlets stand away from baths and showers of their room. */
export const bathSocketDistance = rule<Message>({
  id: 'PO6',
  title: 'Distance of socket-outlets from a bath or shower',
  source: 'BS 7671 701.512.3',
  messages: {
    far: '{actual} mm from the edge of zone 1; {limit} mm is asked for.',
    disputed:
      '{actual} mm from the edge of zone 1. Sources disagree: 2500 mm since Amendment 2 (kept), {limit} mm before it (not kept).',
    near: '{actual} mm from the edge of zone 1 of a bath or shower in the room; {limit} mm is asked for (3000 mm before Amendment 2).',
    notDrawn: 'The room is a bathroom and no bath or shower is drawn, so {limit} mm cannot be shown.',
  },
  remedies: {
    disputed: 'Check your own copy of the edition in force, or move it to 3 m.',
    near: 'Move it out of the room or further off; a shaver unit to BS EN 61558-2-5 is excepted.',
    notDrawn: 'Draw the bath and the shower.',
  },
  couldFail: true,
  check: (facts) =>
    [...newAccessories(facts), ...foundAccessories(facts)]
      .filter(isSocket)
      .flatMap((socket) => judged(facts, socket)),
});

function judged(facts: Facts, socket: PlacedAccessory): readonly CheckResult<Message>[] {
  const subject = { subjectId: socket.id, origin: socket.origin };
  const awayMm = toZone1Mm(facts, socket);
  if (awayMm === null)
    return isUndrawnBathroom(facts, socket)
      ? [{ ...subject, outcome: 'not-proven', messageId: 'notDrawn', limit: BATH_SOCKET_MM, unit: 'mm' }]
      : [];
  if (awayMm < BATH_SOCKET_MM)
    return [{ ...subject, outcome: 'fails', messageId: 'near', ...figures(awayMm, BATH_SOCKET_MM, 'mm') }];
  const disputed = awayMm < BATH_SOCKET_BEFORE_A2_MM;
  const numbers = figures(awayMm, disputed ? BATH_SOCKET_BEFORE_A2_MM : BATH_SOCKET_MM, 'mm');
  return disputed
    ? [{ ...subject, outcome: 'decide', messageId: 'disputed', ...numbers }]
    : [{ ...subject, outcome: 'passes', messageId: 'far', ...numbers }];
}
