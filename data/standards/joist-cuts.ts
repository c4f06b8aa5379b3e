import type { Table } from './table.ts';

/**
 * How solid timber joists may be cut: the size of a hole or the depth of a notch as a share of the joist's depth, and where,
 * as shares of its clear span from either support. Holes are on the centre line, `apartDiameters` of the larger one from
 * centre to centre; for notches no distance is printed. Not for engineered, metal-web or trussed timbers.
 */
export const joistCuts = {
  source: {
    ref: 'Approved Document A (2004 with later amendments); BS 5268-2; IET On-Site Guide',
    where: 'the guide’s figure of holes and notches in joists; clause numbers of the others were not seen',
    checked:
      'tlc-direct.co.uk Book 4.4.1; diydoctor.org.uk "Notching joist"; tomspriggs.com "Timber notching"; notches by the last two',
  },
  rows: [
    { cut: 'hole', depthRatio: 0.25, fromRatio: 0.25, toRatio: 0.4, apartDiameters: 3, status: 'seen' },
    { cut: 'notch', depthRatio: 0.125, fromRatio: 0.07, toRatio: 0.25, apartDiameters: null, status: 'seen' },
  ],
} as const satisfies Table;
