import type { Table } from './table.ts';

/**
 * Factor for cables that touch and are loaded together, by their number: `enclosedRatio` bunched, embedded in
 * plaster or in one tube or channel; `layerRatio` in a single layer clipped to a surface. For a number that is
 * not listed the next greater one counts.
 */
export const table4C1 = {
  source: {
    ref: 'BS 7671 (17th edition print; two to nine alike in the 16th)',
    where: 'Table 4C1',
    checked: 'https://fliphtml5.com/glisk/snup/17th_edition_iee_wiring_regulations/60/',
  },
  rows: [
    { cables: 1, enclosedRatio: 1, layerRatio: 1, status: 'seen' },
    { cables: 2, enclosedRatio: 0.8, layerRatio: 0.85, status: 'seen' },
    { cables: 3, enclosedRatio: 0.7, layerRatio: 0.79, status: 'seen' },
    { cables: 4, enclosedRatio: 0.65, layerRatio: 0.75, status: 'seen' },
    { cables: 5, enclosedRatio: 0.6, layerRatio: 0.73, status: 'seen' },
    { cables: 6, enclosedRatio: 0.57, layerRatio: 0.72, status: 'seen' },
    { cables: 7, enclosedRatio: 0.54, layerRatio: 0.72, status: 'seen' },
    { cables: 8, enclosedRatio: 0.52, layerRatio: 0.71, status: 'seen' },
    { cables: 9, enclosedRatio: 0.5, layerRatio: 0.7, status: 'seen' },
    { cables: 12, enclosedRatio: 0.45, layerRatio: 0.7, status: 'seen' },
    { cables: 16, enclosedRatio: 0.41, layerRatio: 0.7, status: 'seen' },
    { cables: 20, enclosedRatio: 0.38, layerRatio: 0.7, status: 'seen' },
  ],
} as const satisfies Table;
