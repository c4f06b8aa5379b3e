import type { Table } from './table.ts';

/**
 * What is usual at the origin, Ω. `external-loop`: the greatest that distributors declare where they give the
 * earth (a reading goes before it: higher ones are met in the country); `consumer-electrode`: what a house’s own
 * electrode has at most while it counts as steady.
 */
export const supplyImpedance = {
  source: {
    ref: 'distributors’ declared values (Engineering Recommendation P23, by memory); BS 7671 Table 41.5, note',
    where: 'external earth fault loop impedance',
    checked: 'on the pages named by row',
  },
  rows: [
    {
      earthing: 'TN-C-S',
      what: 'external-loop',
      maximumOhm: 0.35,
      status: 'seen',
      page: 'https://engx.theiet.org/f/wiring-and-regulations/28037/max-ze-values-from-dno/120514',
    },
    {
      earthing: 'TN-S',
      what: 'external-loop',
      maximumOhm: 0.8,
      status: 'seen',
      page: 'https://engx.theiet.org/f/wiring-and-regulations/28037/max-ze-values-from-dno/120514',
    },
    {
      earthing: 'TT',
      what: 'consumer-electrode',
      maximumOhm: 200,
      status: 'seen',
      page: 'https://electriciansforums.net/threads/some-advice-on-testing-if-you-will.52683/page-2',
    },
  ],
} as const satisfies Table;
