import type { ConnectionPlace, FlexOrigin, Lead } from './connection-place.ts';
import { flexLead } from './leads.ts';

/**
 * The appliance's end of a flex as a place of its own: somebody has to connect it too, and no cable of the circuit ends there. Its
 * terminals are named as is usual; its maker marks them.
 *
 * @param place the unit, or outlet plate, that the flex comes out of.
 * @returns none for a lead that is no flex.
 */
export function appliancePlace(place: ConnectionPlace, { flex }: Lead): readonly ConnectionPlace[] {
  if (flex === undefined) return [];
  const use = flex.load?.use.trim() || 'appliance';
  return [
    {
      id: `${place.id}/appliance`,
      mark: `${place.mark} ${use}`,
      kind: 'appliance',
      accessory: null,
      storeyId: place.storeyId,
      room: place.room,
      heightMm: null,
      isWorkedOn: true,
      sides: [],
      gone: [],
      leads: [flexLead(flex, ['L', 'N', 'E'])],
      box: null,
      joint: null,
      mixesColours: false,
      devices: [],
      buyFor: null,
      unrecordedCircuits: [],
      fedFrom: { mark: place.mark, partedBy: partedBy(place) },
    },
  ];
}

function partedBy({ kind, accessory }: ConnectionPlace): FlexOrigin['partedBy'] {
  if (kind !== 'fused-unit') return 'before';
  // An RCD in a unit has a switch of its own.
  return accessory?.features.some((each) => each === 'switched' || each === 'rcd') === false
    ? 'fuse'
    : 'switch';
}
