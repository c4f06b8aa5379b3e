import type { Table } from './table.ts';

/**
 * Conductors of the years before metric sizes, smallest first: number of wires and the diameter of one in
 * thousandths of an inch, with the area that they make. Two figures were seen in print, the rest follow from the
 * wires: n · π/4 · (0.0254 · d)² mm².
 */
export const imperialCable = {
  source: {
    ref: 'sizes of the cable standards before 1970',
    where: 'number of wires and diameter in the name',
    checked:
      'areas of 3/.029 and 7/.029 in print; names of the others from memory, their areas by arithmetic',
  },
  rows: [
    { size: '1/.044', wires: 1, wireMil: 44, areaMm2: 0.98, status: 'derived' },
    {
      size: '3/.029',
      wires: 3,
      wireMil: 29,
      areaMm2: 1.28,
      status: 'seen',
      page: 'https://diynot.com/diy/threads/old-imperial-7-029-twin-and-earth.444616/page-2',
    },
    { size: '3/.036', wires: 3, wireMil: 36, areaMm2: 1.97, status: 'derived' },
    {
      size: '7/.029',
      wires: 7,
      wireMil: 29,
      areaMm2: 2.98,
      status: 'seen',
      page: 'https://diynot.com/diy/threads/old-imperial-7-029-twin-and-earth.444616/page-2',
    },
    { size: '7/.036', wires: 7, wireMil: 36, areaMm2: 4.6, status: 'derived' },
    { size: '7/.044', wires: 7, wireMil: 44, areaMm2: 6.87, status: 'derived' },
  ],
} as const satisfies Table;
