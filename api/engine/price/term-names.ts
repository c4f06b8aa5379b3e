import type { Terms } from '#model/job.ts';

/** What the terms of a job are called. */
export const termNames: Readonly<Record<keyof Terms, string>> = {
  labour: 'labour level',
  markupPercent: 'mark-up',
  marginPercent: 'margin',
  contingencyPercent: 'contingency',
  vat: 'VAT',
  vatCondition: 'condition of the VAT rate',
  travelMin: 'travel',
  dayHours: 'working day',
  minimumPence: 'minimum charge',
  profitOn: 'share of the price that mark-up or margin are put on',
  callOutPence: 'call-out',
  multipliers: 'what makes the work slower or faster',
  furniture: 'one who moves the furniture',
  drying: 'way that plaster is given its time',
  depositPercent: 'deposit',
  depositPence: 'deposit',
  parking: 'parking',
  validDays: 'days the price holds',
  chased: 'protection of cables in walls',
  filling: 'plaster for cuts in walls',
  finish: 'finish of new plates',
  charging: 'way of charging',
};
