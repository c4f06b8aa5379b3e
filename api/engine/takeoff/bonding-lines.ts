import type { Supply } from '#model/installation.ts';
import { leastBondMm2 } from '../connections/least-bond.ts';
import type { Demand } from './demand.ts';
import { type KitCounts, usualSold } from './kit-counts.ts';

/**
 * The conductor and the clamp of a main bond that is made or renewed: the least size bought that serves. One clamp a service,
 * where it comes in. Source: BS 7671 544.1.2.
 */
export function bondDemands(supply: Supply, cause: string, counts: KitCounts): readonly Demand[] {
  const { bondMm, bondLeastPercent, bondMostPercent } = counts;
  const measured = bondMm / 1e3;
  const lengths = {
    measured,
    low: (measured * bondLeastPercent) / 100,
    high: (measured * bondMostPercent) / 100,
  };
  return [
    {
      item: `earth-single-${bondSizeMm2(supply, counts)}`,
      unit: 'm',
      group: 'cable',
      ...lengths,
      causes: [cause],
    },
    { item: 'bonding-clamp', unit: 'each', group: 'protection', measured: 1, causes: [cause] },
  ];
}

/** Where nothing bought is thick enough, it is the size sold that is: a thinner bond does not serve. */
function bondSizeMm2(supply: Supply, { bondMm2, sold }: KitCounts): number {
  const leastMm2 = leastBondMm2(supply) ?? bondMm2;
  const serving = (sizes: readonly number[]) => sizes.find((mm2) => mm2 >= leastMm2);
  return serving(sold.bondsMm2) ?? serving(usualSold.bondsMm2) ?? Math.max(...usualSold.bondsMm2);
}
