import type { Supply } from '#model/installation.ts';
import { leastBondMm2 } from '../connections/least-bond.ts';
import type { Demand } from './demand.ts';

/** Bonding conductor to a service where nobody has measured the way, m. Common practice, no source. */
const BOND_M = { measured: 10, low: 4, high: 20 } as const;
/** Sizes that bonding conductors are sold in, mm². Source: merchants' sizes, from memory. */
export const BOND_SIZES_MM2 = [6, 10, 16, 25] as const;
/** What is taken along where nobody can say how much is asked for, mm². Common practice, no source. */
const USUAL_BOND_MM2 = 10;

/** The conductor and the clamp of a main bond that is made or renewed: the least size sold that serves. */
export function bondDemands(supply: Supply, cause: string): readonly Demand[] {
  return [
    { item: `earth-single-${bondSizeMm2(supply)}`, unit: 'm', group: 'cable', ...BOND_M, causes: [cause] },
    { item: 'bonding-clamp', unit: 'each', group: 'protection', measured: 1, causes: [cause] },
  ];
}

function bondSizeMm2(supply: Supply): number {
  const leastMm2 = leastBondMm2(supply) ?? USUAL_BOND_MM2;
  return BOND_SIZES_MM2.find((mm2) => mm2 >= leastMm2) ?? Math.max(...BOND_SIZES_MM2);
}
