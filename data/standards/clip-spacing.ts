import type { Table } from './table.ts';

/**
 * Greatest distance between the clips of a cable by its overall width (for flat cable the larger dimension).
 * The first step ends at 9 mm and the next begins at 10: what lies between is taken with the closer one.
 */
export const clipSpacingTable = {
  source: {
    ref: 'IET On-Site Guide',
    where: 'Table D1',
    checked: 'wiki.diyfaq.org.uk "Cable clip"; tlc-direct.co.uk Book 4.4.1 has the same figures',
  },
  rows: [
    { uptoMm: 9, horizontalMm: 250, verticalMm: 400, status: 'seen' },
    { uptoMm: 15, horizontalMm: 300, verticalMm: 400, status: 'seen' },
    { uptoMm: 20, horizontalMm: 350, verticalMm: 450, status: 'seen' },
    { uptoMm: 40, horizontalMm: 400, verticalMm: 550, status: 'seen' },
  ],
} as const satisfies Table;
