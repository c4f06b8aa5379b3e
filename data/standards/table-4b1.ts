import type { Table } from './table.ts';

/**
 * Factor on the capacity of 70 °C thermoplastic cable in air for another ambient temperature than 30 °C, coolest
 * first. For a temperature that is not listed the next greater one counts.
 */
export const table4B1 = {
  source: {
    ref: 'BS 7671',
    where: 'Table 4B1, 70 °C thermoplastic',
    checked:
      'https://de.scribd.com/document/245595863/IEE-Wiring-Regulation-Basic-Summary-and-Tables and https://www.scribd.com/document/324896274/App-1E-V2',
  },
  rows: [
    { ambientC: 25, factorRatio: 1.03, status: 'seen' },
    { ambientC: 30, factorRatio: 1, status: 'seen' },
    { ambientC: 35, factorRatio: 0.94, status: 'seen' },
    { ambientC: 40, factorRatio: 0.87, status: 'seen' },
    { ambientC: 45, factorRatio: 0.79, status: 'seen' },
    { ambientC: 50, factorRatio: 0.71, status: 'seen' },
    { ambientC: 55, factorRatio: 0.61, status: 'seen' },
    { ambientC: 60, factorRatio: 0.5, status: 'seen' },
  ],
} as const satisfies Table;
