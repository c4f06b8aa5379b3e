import type { Table } from './table.ts';

/**
 * Colours of cores in single-phase fixed wiring. Either set might be used, not mixed within one job, from 31 March 2004 to
 * 31 March 2006; the older stays as it is. Two colours changed their meaning: see `mistaken`.
 */
export const coreColours = {
  source: {
    ref: 'BS 7671 Table 51, Appendix 7; IEE Wiring Matters 2004, “All change! New colours agreed”',
    where: 'fixed wiring, single phase',
    checked:
      'https://id.scribd.com/document/130864058/All-Change-New-Colours-Agreed; https://online.flipbuilder.com/hzzr/jtap/files/basic-html/page6.html; http://web.onetel.net.uk/~uncletony/mains%20stuff.htm',
  },
  rows: [
    {
      set: 'old',
      line: 'red',
      neutral: 'black',
      earth: 'green-yellow',
      firstDay: null,
      lastDay: '2006-03-31',
      status: 'seen',
    },
    {
      set: 'new',
      line: 'brown',
      neutral: 'blue',
      earth: 'green-yellow',
      firstDay: '2004-03-31',
      lastDay: null,
      status: 'seen',
    },
  ],
} as const satisfies Table;

/** The colours that mean one thing in old cable and another in new: the danger where both are in one box. Source: as above. */
export const mistaken = [
  { colour: 'black', old: 'neutral', now: 'line of a second phase' },
  { colour: 'blue', old: 'line of a third phase', now: 'neutral' },
] as const;
