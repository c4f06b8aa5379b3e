import type { Table } from './table.ts';

/**
 * What the line terminal of a BS 1363 accessory must take at least: so many conductors of one size. Many makes
 * take more. The greatest summed area among the rows is the area that any make takes.
 */
export const terminalCapacity = {
  source: {
    ref: 'BS 1363-2, BS 1363-4',
    where: 'terminals (clause 11 by memory)',
    checked:
      'https://engx.theiet.org/f/wiring-and-regulations/30062/minimum-maximum-cable-sizes-in-terminations',
  },
  rows: [
    { conductors: 3, areaMm2: 2.5, status: 'seen' },
    { conductors: 2, areaMm2: 4, status: 'seen' },
    { conductors: 1, areaMm2: 6, status: 'seen' },
  ],
} as const satisfies Table;
