import type { Table } from './table.ts';

/**
 * What the law gives a consumer who agrees away from a trader's premises, or at a distance: only the figures and the things
 * that a notice has to hold, in our own words.
 */
export const consumerCancellation = {
  source: {
    ref: 'The Consumer Contracts (Information, Cancellation and Additional Charges) Regulations 2013 (SI 2013/3134)',
    where: 'each row names its regulation or schedule',
    checked:
      'the 14 days, and that work in them wants an express request, read in stored pages of trading standards services (Kent, Herefordshire); the rest from memory of the regulations: check against legislation.gov.uk',
  },
  rows: [
    { fact: 'cancel-within-days', value: 14, where: 'regulation 30', status: 'seen' },
    { fact: 'refund-within-days', value: 14, where: 'regulation 34', status: 'memory' },
    // An agreement made away from the trader's premises for no more than this is outside the right.
    { fact: 'least-pence', value: 4200, where: 'regulation 27(3)', status: 'memory' },
  ],
} as const satisfies Table;

/** A figure of the regulations. */
export type CancellationFact = (typeof consumerCancellation.rows)[number]['fact'];
