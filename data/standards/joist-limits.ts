import type { Table } from './table.ts';

/** What a warranty provider's guidance adds for cut joists: the deepest that it speaks of, and how far a hole keeps from a notch. */
export const joistLimits = {
  source: {
    ref: 'NHBC Standards 2020',
    where: '6.4.18, notching and drilling',
    checked:
      'nhbc-standards.co.uk/2020, 6.4.18; the 100 mm also in tomspriggs.com "Timber notching" and a summary of the Scottish handbook. Its notches (0.15 of the depth, at 0.1 to 0.2 of the span) differ from Approved Document A and are not followed',
  },
  rows: [
    { limit: 'deepest-joist', mm: 250, status: 'seen' },
    { limit: 'hole-to-notch', mm: 100, status: 'seen' },
  ],
} as const satisfies Table;
