import type { Table } from './table.ts';

/**
 * What part of the current of a household’s circuits and appliances counts towards its demand, by their use.
 * `countedBy`: the rule holds for `each` appliance, or for the `total` of that use. The `fullCount` greatest count
 * whole; of the others, and of a total, `fullUpToA` counts whole and of the rest `restRatio`. `socketA` is added
 * where the appliance’s control unit has a socket-outlet.
 */
export const householdDiversity = {
  source: {
    ref: 'IET On-Site Guide',
    where: 'Appendix A, individual household installations',
    checked:
      'https://www.tlc-direct.co.uk/Figures/Tab6.2.htm and https://wiki.diyfaq.org.uk/index.php?title=Diversity&oldid=14729',
  },
  rows: [
    {
      use: 'standard-circuit',
      countedBy: 'each',
      fullCount: 1,
      fullUpToA: 0,
      restRatio: 0.4,
      socketA: 0,
      status: 'seen',
    },
    {
      use: 'lighting',
      countedBy: 'total',
      fullCount: 0,
      fullUpToA: 0,
      restRatio: 0.66,
      socketA: 0,
      status: 'seen',
    },
    {
      use: 'heating',
      countedBy: 'total',
      fullCount: 0,
      fullUpToA: 10,
      restRatio: 0.5,
      socketA: 0,
      status: 'seen',
    },
    {
      use: 'cooker',
      countedBy: 'each',
      fullCount: 0,
      fullUpToA: 10,
      restRatio: 0.3,
      socketA: 5,
      status: 'seen',
    },
    {
      use: 'instant-water',
      countedBy: 'each',
      fullCount: 2,
      fullUpToA: 0,
      restRatio: 0.25,
      socketA: 0,
      status: 'seen',
    },
    // Thermostatic water heaters, floor warming and storage heating.
    {
      use: 'undiversified',
      countedBy: 'total',
      fullCount: 0,
      fullUpToA: 0,
      restRatio: 1,
      socketA: 0,
      status: 'seen',
    },
  ],
} as const satisfies Table;
