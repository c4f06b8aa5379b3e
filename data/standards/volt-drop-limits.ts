import type { Table } from './table.ts';

/** Greatest volt drop between the origin of a public supply and any point, % of the nominal voltage. */
export const voltDropLimits = {
  source: {
    ref: 'BS 7671:2018',
    where: 'Appendix 4 §6.4, with 525',
    checked: 'https://zdroje.elektrika.cz/book/basic-electrical-installation-work/page/313 and one more page',
  },
  rows: [
    { use: 'lighting', percent: 3, status: 'seen' },
    { use: 'other', percent: 5, status: 'seen' },
  ],
} as const satisfies Table;
