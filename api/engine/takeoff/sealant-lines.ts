import type { Wall } from '#model/building.ts';
import type { Worked } from '../connections/worked.ts';
import { boxWork } from './box-lines.ts';
import type { Demand } from './demand.ts';
import type { KitCounts } from './kit-counts.ts';
import { ownHoles } from './own-holes.ts';

/** An opening that is closed; perhaps only, where nobody knows whether a box has to be exchanged. */
interface Opening {
  readonly cause: string;
  readonly isSure: boolean;
}

/**
 * What keeps fire, sound and weather out: sealant that swells in a fire for holes and flush boxes in party walls, weather sealant
 * for holes to the outside. A hole that several cables share is sealed once.
 */
export function sealantDemands(
  worked: Worked,
  { openingsACartridge }: Pick<KitCounts, 'openingsACartridge'>,
): readonly Demand[] {
  const cartridges = (item: string, openings: readonly Opening[]) =>
    sealed(item, openings, openingsACartridge);
  return [
    ...cartridges('fire-sealant', [
      ...holesIn(worked, ({ party }) => party === true),
      ...flushInParty(worked),
    ]),
    ...cartridges(
      'weather-sealant',
      holesIn(worked, ({ external, party }) => external && party !== true),
    ),
  ];
}

function holesIn({ runs, plan }: Worked, isMeant: (wall: Wall) => boolean): readonly Opening[] {
  return ownHoles(runs).flatMap(({ runId, segment: { medium, wallId } }) => {
    const wall = wallId === null ? undefined : plan.wallById.get(wallId)?.wall;
    return medium === 'through-wall' && wall !== undefined && isMeant(wall)
      ? [{ cause: runId, isSure: true }]
      : [];
  });
}

const flushInParty = (worked: Worked): readonly Opening[] =>
  boxWork(worked)
    .filter(({ box }) => box.party && box.build !== 'surface')
    .map(({ box, measured }) => ({ cause: box.id, isSure: measured > 0 }));

/** @param each openings that a cartridge of 300 ml closes: the gaps round a box, or both sides of a hole. */
function sealed(item: string, openings: readonly Opening[], each: number): Demand[] {
  if (openings.length === 0) return [];
  const sure = openings.filter(({ isSure }) => isSure);
  return [
    {
      ...{ item, unit: 'each', group: 'making-good' },
      measured: Math.ceil(sure.length / each),
      high: Math.ceil(openings.length / each),
      causes: [...new Set((sure.length > 0 ? sure : openings).map(({ cause }) => cause))].toSorted(),
    },
  ];
}
