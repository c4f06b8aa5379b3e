import type { Table } from './table.ts';

/**
 * Factor on the clipped-direct capacity for a cable wholly surrounded by thermal insulation, by the length
 * surrounded; 500 mm stands for that and more. For a length that is not listed the next greater one counts.
 */
export const table522 = {
  source: {
    ref: 'BS 7671:2018',
    where: 'Table 52.2 with 523.9',
    checked: 'the half from 500 mm on seen on public pages, shorter lengths from memory',
  },
  rows: [
    { lengthMm: 50, factorRatio: 0.88, status: 'memory' },
    { lengthMm: 100, factorRatio: 0.78, status: 'memory' },
    { lengthMm: 200, factorRatio: 0.63, status: 'memory' },
    { lengthMm: 400, factorRatio: 0.51, status: 'memory' },
    {
      lengthMm: 500,
      factorRatio: 0.5,
      status: 'seen',
      page: 'wiring handbook on line, 16th edition, section 4.3.6',
    },
  ],
} as const satisfies Table;
