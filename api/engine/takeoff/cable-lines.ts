import type { Cable } from '#model/cable.ts';
import type { Worked } from '../connections/worked.ts';
import { type Demand, pieceOf } from './demand.ts';
import type { KitCounts } from './kit-counts.ts';
import { cableLengthM } from './run-length.ts';

/** The cable of every run with its ends and slack, and the flex of every appliance. */
export function cableDemands(worked: Worked, counts: KitCounts): readonly Demand[] {
  const cables = worked.runs.map((run): Demand => {
    const { measuredM, lowM, highM } = cableLengthM(run);
    const item = cableItem(run.cable);
    const piece = pieceOf({ cause: run.id, measuredM, lowM, highM, unbroken: true });
    return {
      item,
      unit: 'm',
      group: 'cable',
      measured: measuredM,
      low: lowM,
      high: highM,
      causes: [run.id],
      pieces: [piece],
    };
  });
  return [...cables, ...flexDemands(worked, counts.applianceFlexMm / 1000)];
}

/** The item id of a cable; flat twin and earth and flex have short names, all others are named by their type. */
export function cableItem({ type, lineMm2, cpcMm2 }: Cable): string {
  if (type === 'flex') return `flex-${lineMm2}`;
  return type === 'flat-twin' ? `cable-flat-${lineMm2}-${cpcMm2}` : `cable-${type}-${lineMm2}-${cpcMm2}`;
}

function flexDemands({ things }: Worked, lengthM: number): Demand[] {
  if (lengthM === 0) return [];
  const ofUnits = things.fusedUnits
    .filter((unit) => unit.state === 'new' && unit.flexOutlet)
    .map((unit) => flexDemand(unit.fuseA, unit.id, lengthM));
  const ofPlates = things.accessories
    .filter((accessory) => accessory.kind === 'flex-outlet')
    .map((accessory) => {
      const unit = things.fusedUnits.find((candidate) => candidate.accessories.includes(accessory.id));
      return flexDemand(unit?.fuseA ?? null, accessory.id, lengthM);
    });
  return [...ofUnits, ...ofPlates];
}

function flexDemand(fuseA: number | null, id: string, lengthM: number): Demand {
  const item = `flex-${flexAreaMm2(fuseA)}`;
  const piece = pieceOf({ cause: id, measuredM: lengthM, lowM: lengthM, highM: lengthM, unbroken: true });
  return { item, unit: 'm', group: 'cable', measured: lengthM, causes: [id], pieces: [piece] };
}

/**
 * The flex that a fuse protects, mm²: 0.75 up to 6 A, 1 up to 10 A, 1.5 above or where no fuse is known.
 * Source: BS 7671 Table 4F3A (current-carrying capacity of flexible cables), from memory.
 */
export function flexAreaMm2(fuseA: number | null): number {
  if (fuseA === null || fuseA > 10) return 1.5;
  return fuseA > 6 ? 1 : 0.75;
}
