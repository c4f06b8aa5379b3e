import type { Table } from './table.ts';

/**
 * Longest time to disconnect a fault to earth at 230 V, s. `final`: final circuits up to 63 A with socket-outlets
 * and up to 32 A with fixed equipment only; `other`: distribution circuits and whatever is not `final`.
 */
export const disconnectionTimes = {
  source: {
    ref: 'BS 7671:2018',
    where: '411.3.2.2 to 411.3.2.4, Table 41.1',
    checked: 'times on public pages; the ratings that bound a final circuit (63 A, 32 A) from memory',
  },
  rows: [
    {
      system: 'TN',
      circuit: 'final',
      timeS: 0.4,
      status: 'seen',
      page: 'https://pdfcoffee.com/bs-7671-tables-412-413-amp-414-pdf-free.html',
    },
    {
      system: 'TN',
      circuit: 'other',
      timeS: 5,
      status: 'seen',
      page: 'https://pdfcoffee.com/bs-7671-tables-412-413-amp-414-pdf-free.html',
    },
    {
      system: 'TT',
      circuit: 'final',
      timeS: 0.2,
      status: 'seen',
      page: 'https://engx.theiet.org/f/wiring-and-regulations/21106/bs7671-2018-minor-works-certificates?pifragment-2370=4',
    },
    {
      system: 'TT',
      circuit: 'other',
      timeS: 1,
      status: 'seen',
      page: 'https://engx.theiet.org/f/wiring-and-regulations/21106/bs7671-2018-minor-works-certificates?pifragment-2370=4',
    },
  ],
} as const satisfies Table;
