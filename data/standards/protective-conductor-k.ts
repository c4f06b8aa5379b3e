import type { Table } from './table.ts';

/**
 * Factor k of the adiabatic equation for copper with 70 °C thermoplastic insulation up to 300 mm², A·√s per mm²,
 * by where the protective conductor lies.
 */
export const protectiveConductorK = {
  source: {
    ref: 'BS 7671:2018',
    where: 'Tables 54.3 (in a cable or bunched; live conductors alike, Table 43.1) and 54.2 (neither)',
    checked: 'https://online.flipbuilder.com/hzzr/jtap/files/basic-html/page25.html',
  },
  rows: [
    { lies: 'in-cable', k: 115, status: 'seen' },
    { lies: 'separate', k: 143, status: 'seen' },
  ],
} as const satisfies Table;
