import type { Wall } from '#model/building.ts';
import type { Worked } from '../connections/worked.ts';
import { boxWork } from './box-lines.ts';
import type { Demand } from './demand.ts';
import { ownHoles } from './own-holes.ts';

/** Openings that a cartridge of 300 ml closes: the gaps round a box, or both sides of a hole. Common practice, no source. */
const OPENINGS_A_CARTRIDGE = 4;

/** An opening that is closed; perhaps only, where nobody knows whether a box has to be exchanged. */
interface Opening {
  readonly cause: string;
  readonly isSure: boolean;
}

/**
 * What keeps fire, sound and weather out: sealant that swells in a fire for holes and flush boxes in party walls, weather sealant
 * for holes to the outside. A hole that several cables share is sealed once.
 */
export function sealantDemands(worked: Worked): readonly Demand[] {
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

function cartridges(item: string, openings: readonly Opening[]): Demand[] {
  if (openings.length === 0) return [];
  const sure = openings.filter(({ isSure }) => isSure);
  return [
    {
      ...{ item, unit: 'each', group: 'making-good' },
      measured: Math.ceil(sure.length / OPENINGS_A_CARTRIDGE),
      high: Math.ceil(openings.length / OPENINGS_A_CARTRIDGE),
      causes: [...new Set((sure.length > 0 ? sure : openings).map(({ cause }) => cause))].toSorted(),
    },
  ];
}
