import type { Table } from './table.ts';

/** Mini-trunking with the cable section that fills 45 % of it, smallest first; `wideMm` is the wide side outside. */
export const channelCapacity = {
  source: {
    ref: 'IET On-Site Guide Appendix E (45 % space factor), with one maker’s capacities',
    where: 'a cable management brochure, page 42',
    checked: 'storage.electrika.com, capacities at 45 %',
  },
  rows: [
    { name: '16x16', wideMm: 16, capacityMm2: 67, status: 'seen' },
    { name: '25x16', wideMm: 25, capacityMm2: 120, status: 'seen' },
    { name: '40x16', wideMm: 40, capacityMm2: 209, status: 'seen' },
    { name: '40x25', wideMm: 40, capacityMm2: 360, status: 'seen' },
    { name: '40x40', wideMm: 40, capacityMm2: 585, status: 'seen' },
    { name: '50x50', wideMm: 50, capacityMm2: 898, status: 'seen' },
  ],
} as const satisfies Table;
