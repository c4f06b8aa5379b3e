import type { Wall } from '#model/building.ts';
import type { Worked } from '../connections/worked.ts';
import { boxWork } from './box-lines.ts';
import type { Demand } from './demand.ts';
import type { KitCounts } from './kit-counts.ts';
import { ownHoles } from './own-holes.ts';

/** An opening that is closed; perhaps only, where nobody knows whether a box has to be exchanged. */
export interface Opening {
  /** The run, or the box. */
  readonly cause: string;
  readonly isSure: boolean;
}

/** The openings of a scheme that are sealed, by what they are sealed against. */
export interface OpeningsToSeal {
  /** Holes and flush boxes in party walls. */
  readonly party: readonly Opening[];
  /** Holes to the outside. */
  readonly outside: readonly Opening[];
  readonly all: readonly Opening[];
}

/** What a scheme opens in party walls and to the outside. A hole that several cables share is one, by the first of them. */
export function openingsToSeal(worked: Worked): OpeningsToSeal {
  const party = [...holesIn(worked, (wall) => wall.party === true), ...flushInParty(worked)];
  const outside = holesIn(worked, (wall) => wall.external && wall.party !== true);
  return { party, outside, all: [...party, ...outside] };
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
  const { party, outside } = openingsToSeal(worked);
  return [...cartridges('fire-sealant', party), ...cartridges('weather-sealant', outside)];
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
