import type { Table } from './table.ts';

/**
 * Capacity of flat twin cable by reference method B: in oval tube or conduit in or on a masonry wall, in a
 * channel on the surface, and in the hollow of a building that has no thermal insulation. Table 4D5 has no
 * column for it; the figures are those of two-core cable in 4D2A. A at 30 °C. Listed sizes only.
 */
export const methodBFlatCable = {
  source: {
    ref: 'BS 7671:2018',
    where: 'Table 4D2A, two-core cable, reference method B',
    checked: '2.5 and 4 mm² from public pages, the rest from memory',
  },
  rows: [
    { areaMm2: 1, currentA: 13, status: 'memory' },
    { areaMm2: 1.5, currentA: 16.5, status: 'memory' },
    {
      areaMm2: 2.5,
      currentA: 23,
      status: 'seen',
      page: 'https://electriciansforums.net/threads/ring-circuit-in-mini-trunking.9542',
    },
    {
      areaMm2: 4,
      currentA: 30,
      status: 'seen',
      page: 'https://www.diynot.com/diy/threads/32a-radial-on-4mm-cable-surface-mounted-in-trunking.416518/',
    },
    { areaMm2: 6, currentA: 38, status: 'memory' },
    { areaMm2: 10, currentA: 52, status: 'memory' },
    { areaMm2: 16, currentA: 69, status: 'memory' },
  ],
} as const satisfies Table;
