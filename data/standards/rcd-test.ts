import type { Table } from './table.ts';

/**
 * The test of a residual current device: one alternating test at so many times its rated residual current,
 * whatever its type, and the times within which it must have opened; `minimumMs` nought where it may open at once.
 */
export const rcdTest = {
  source: {
    ref: 'BS 7671:2018+A2:2022',
    where: '643.7.1, 643.8; times of BS EN 61008, BS EN 61009 and BS 7288',
    checked:
      'the one test at one times: https://electrical.theiet.org/wiring-matters/years/2022/91-july-2022/changes-to-rcd-testing-in-bs-76712018plusa22022; the times from memory',
  },
  rows: [
    { kind: 'general', testMultiple: 1, minimumMs: 0, maximumMs: 300, status: 'memory' },
    { kind: 'time-delayed', testMultiple: 1, minimumMs: 130, maximumMs: 500, status: 'memory' },
    // An RCD in a socket-outlet or a fused unit to BS 7288 was held to less than one at the board; what its edition of 2016 has was not seen.
    { kind: 'in-accessory', testMultiple: 1, minimumMs: 0, maximumMs: 200, status: 'memory' },
  ],
} as const satisfies Table;
