import type { Table } from './table.ts';

/** Typical overall dimensions of flat twin and earth by line area; makers differ by a few tenths of a millimetre. */
export const flatCableDimensions = {
  source: {
    ref: 'BS 6004 flat cable, as makers print it',
    where: 'typical overall dimensions',
    checked: 'diynot.com wiki "Flat PVC cables"; the thickness has this one source',
  },
  rows: [
    { areaMm2: 1, widthMm: 7.8, thicknessMm: 4.25, status: 'seen' },
    { areaMm2: 1.5, widthMm: 8.2, thicknessMm: 5, status: 'seen' },
    { areaMm2: 2.5, widthMm: 10.3, thicknessMm: 6, status: 'seen' },
    { areaMm2: 4, widthMm: 11.9, thicknessMm: 6.25, status: 'seen' },
    { areaMm2: 6, widthMm: 13.5, thicknessMm: 7, status: 'seen' },
    { areaMm2: 10, widthMm: 17.1, thicknessMm: 10, status: 'seen' },
    { areaMm2: 16, widthMm: 19.4, thicknessMm: 10, status: 'seen' },
  ],
} as const satisfies Table;
