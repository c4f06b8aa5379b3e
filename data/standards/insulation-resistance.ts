import type { Table } from './table.ts';

/** Direct test voltage and least insulation resistance of circuits up to 500 V, extra-low voltage excepted. */
export const insulationResistance = {
  source: { ref: 'BS 7671:2018', where: 'Table 64, with 643.3', checked: 'from memory' },
  rows: [{ uptoV: 500, testV: 500, minimumMegohm: 1, status: 'memory' }],
} as const satisfies Table;
