import type { Table } from './table.ts';

/** Deepest chase in a wall of masonry, or in one leaf of a cavity wall, as one part of so many of its thickness. */
export const chaseDepths = {
  source: {
    ref: 'Approved Document A (2004 with later amendments)',
    where: 'section 2C, chases',
    checked:
      'carryduffdesigns.co.uk "Chases in walls"; professional-electrician.com "Chasing and placing accessories"; a blog that prints a sixteenth for level chases has a slip',
  },
  rows: [
    { direction: 'vertical', leafParts: 3, status: 'seen' },
    { direction: 'horizontal', leafParts: 6, status: 'seen' },
  ],
} as const satisfies Table;
