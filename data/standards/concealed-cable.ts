import type { Table } from './table.ts';

/**
 * Distances that keep cable out of the way of nails, screws and drills: the zone along the top of a wall and beside an inside
 * corner; the thickness of wall up to which an accessory's zone reaches through it; the depth from either face of a wall at
 * which no zone is asked for; the cover in joists from the face that fixings enter.
 */
export const concealedCable = {
  source: {
    ref: 'BS 7671:2018',
    where: '522.6.201 (joists), 522.6.202 (walls)',
    checked:
      'owelectric.co.uk, which quotes the On-Site Guide 7.3.2; the-regs.co.uk 586; a trade forum (41036); joists also in tlc-direct.co.uk Book 4.4.1',
  },
  rows: [
    { figure: 'zone', mm: 150, status: 'seen' },
    { figure: 'through-wall', mm: 100, status: 'seen' },
    { figure: 'deep-in-wall', mm: 50, status: 'seen' },
    { figure: 'joist-cover', mm: 50, status: 'seen' },
  ],
} as const satisfies Table;
