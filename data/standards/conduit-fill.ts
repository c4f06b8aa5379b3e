import type { Table } from './table.ts';

/**
 * How much of a round conduit cables may fill that no table of factors lists, as flat ones, and the bores of heavy-gauge
 * plastic conduit by nominal size, smallest first. Charts disagree, 35 % or 45 %; the lower is followed.
 */
export const conduitFill = {
  source: {
    ref: 'IET On-Site Guide Appendix E (cables that are not tabulated: 35 % of the bore)',
    where:
      '35 %: shadowebike.com/how-do-you-calculate-trunking-size; 45 %: a conduit and trunking capacity chart',
    checked: 'both seen as copies; the bores are BS 4607 heavy gauge, from memory',
  },
  fillPercent: 35,
  otherChartsPercent: 45,
  rows: [
    { sizeMm: 20, boreMm: 16.9, status: 'memory' },
    { sizeMm: 25, boreMm: 21.4, status: 'memory' },
    { sizeMm: 32, boreMm: 27.8, status: 'memory' },
  ],
} as const satisfies Table & { readonly fillPercent: number; readonly otherChartsPercent: number };
