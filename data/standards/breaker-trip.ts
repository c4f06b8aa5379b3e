import type { Table } from './table.ts';

/**
 * The multiple of its rating at which a circuit-breaker certainly trips at once (within 0.1 s), by curve.
 * BS EN 61009 devices have the curves of BS EN 60898.
 */
export const breakerTrip = {
  source: {
    ref: 'BS EN 60898-1; BS 3871-1 for the old types',
    where: 'ranges of instantaneous tripping, upper end',
    checked: 'B and C on a public page, D by the limits printed for it, types 1 to 3 from memory',
  },
  rows: [
    {
      standard: 'BS-EN-60898',
      curve: 'B',
      tripMultiple: 5,
      status: 'seen',
      page: 'https://studylib.net/doc/18072339/protection-devices',
    },
    {
      standard: 'BS-EN-60898',
      curve: 'C',
      tripMultiple: 10,
      status: 'seen',
      page: 'https://studylib.net/doc/18072339/protection-devices',
    },
    // The limits of 2008 are printed as 11.5 V-ohms over the rating: 230 V by twenty times.
    {
      standard: 'BS-EN-60898',
      curve: 'D',
      tripMultiple: 20,
      status: 'derived',
      page: 'https://pdfcoffee.com/bs-7671-tables-412-413-amp-414-pdf-free.html',
    },
    { standard: 'BS-3871', curve: '1', tripMultiple: 4, status: 'memory' },
    { standard: 'BS-3871', curve: '2', tripMultiple: 7, status: 'memory' },
    { standard: 'BS-3871', curve: '3', tripMultiple: 10, status: 'memory' },
  ],
} as const satisfies Table;
