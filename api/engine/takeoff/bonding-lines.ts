import type { Supply } from '#model/installation.ts';
import { leastBondMm2 } from '../connections/least-bond.ts';
import type { Demand } from './demand.ts';
import type { KitCounts } from './kit-counts.ts';

/** Of the length that is counted with: what the way may come to at least and at most. Common practice, no source. */
const SHARE = { low: 0.4, high: 2 } as const;
/** Sizes that bonding conductors are sold in, mm². Source: merchants' sizes, from memory. */
export const BOND_SIZES_MM2 = [6, 10, 16, 25] as const;
/** What is taken along where nobody can say how much is asked for, mm². Common practice, no source. */
const USUAL_BOND_MM2 = 10;

/**
 * The conductor and the clamp of a main bond that is made or renewed: the least size sold that serves. One clamp a service,
 * where it comes in. Source: BS 7671 544.1.2.
 */
export function bondDemands(
  supply: Supply,
  cause: string,
  { bondMm }: Pick<KitCounts, 'bondMm'>,
): readonly Demand[] {
  const measured = bondMm / 1e3;
  const lengths = { measured, low: measured * SHARE.low, high: measured * SHARE.high };
  return [
    { item: `earth-single-${bondSizeMm2(supply)}`, unit: 'm', group: 'cable', ...lengths, causes: [cause] },
    { item: 'bonding-clamp', unit: 'each', group: 'protection', measured: 1, causes: [cause] },
  ];
}

function bondSizeMm2(supply: Supply): number {
  const leastMm2 = leastBondMm2(supply) ?? USUAL_BOND_MM2;
  return BOND_SIZES_MM2.find((mm2) => mm2 >= leastMm2) ?? Math.max(...BOND_SIZES_MM2);
}
