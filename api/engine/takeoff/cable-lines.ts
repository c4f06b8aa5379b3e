import type { Cable } from '#model/cable.ts';
import { applianceFlexes } from '../connections/appliance-flex.ts';
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

function flexDemands({ things, job }: Worked, lengthM: number): Demand[] {
  if (lengthM === 0) return [];
  return applianceFlexes(things, job.points).map(({ id, areaMm2 }): Demand => {
    const piece = pieceOf({ cause: id, measuredM: lengthM, lowM: lengthM, highM: lengthM, unbroken: true });
    return {
      item: `flex-${areaMm2}`,
      unit: 'm',
      group: 'cable',
      measured: lengthM,
      causes: [id],
      pieces: [piece],
    };
  });
}
