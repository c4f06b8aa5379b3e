import type { Table } from './table.ts';

/**
 * Greatest direct-current resistance of plain copper conductors at 20 °C by nominal area, mΩ per metre of one
 * conductor. `fixed`: solid or stranded, of cable for fixed wiring (classes 1 and 2); `flexible`: class 5.
 * Listed sizes only: no interpolation.
 */
export const conductorResistance = {
  source: {
    ref: 'IEC 60228 (BS EN 60228)',
    where: 'greatest resistance of plain copper, classes 1 and 2, and class 5',
    checked:
      'fixed: https://www.scribd.com/document/455845828/app4-pdf, uecables.com page 471 and a maker’s data sheet agree; flexible: from memory',
  },
  rows: [
    { make: 'fixed', areaMm2: 1, milliohmPerM: 18.1, status: 'seen' },
    { make: 'fixed', areaMm2: 1.5, milliohmPerM: 12.1, status: 'seen' },
    { make: 'fixed', areaMm2: 2.5, milliohmPerM: 7.41, status: 'seen' },
    { make: 'fixed', areaMm2: 4, milliohmPerM: 4.61, status: 'seen' },
    { make: 'fixed', areaMm2: 6, milliohmPerM: 3.08, status: 'seen' },
    { make: 'fixed', areaMm2: 10, milliohmPerM: 1.83, status: 'seen' },
    { make: 'fixed', areaMm2: 16, milliohmPerM: 1.15, status: 'seen' },
    { make: 'flexible', areaMm2: 0.75, milliohmPerM: 26, status: 'memory' },
    { make: 'flexible', areaMm2: 1, milliohmPerM: 19.5, status: 'memory' },
    { make: 'flexible', areaMm2: 1.5, milliohmPerM: 13.3, status: 'memory' },
    { make: 'flexible', areaMm2: 2.5, milliohmPerM: 7.98, status: 'memory' },
    { make: 'flexible', areaMm2: 4, milliohmPerM: 4.95, status: 'memory' },
    { make: 'flexible', areaMm2: 6, milliohmPerM: 3.3, status: 'memory' },
  ],
} as const satisfies Table;
