import type { Table } from './table.ts';

/**
 * Cartridge fuses of plugs and fused connection units: the preferred ratings, with the load in watts up to
 * which the trade fits each (the maker's word for an appliance always wins).
 */
export const plugFuses = {
  source: {
    ref: 'BS 1362 and BS 1363',
    where: 'preferred ratings; greatest rating',
    checked:
      'http://www.liquisearch.com/bs_1363/fuses; watts from a public page on portable appliance testing',
  },
  rows: [
    { ratingA: 3, practiceUpToW: 700, colour: 'red', status: 'seen' },
    { ratingA: 13, practiceUpToW: 2990, colour: 'brown', status: 'seen' },
  ],
} as const satisfies Table;
