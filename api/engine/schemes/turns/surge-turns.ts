import type { Job } from '#model/job.ts';
import { SURGE_QUESTION, surgeIsOpen } from '../../connections/surge-device.ts';
import type { Worked } from '../../connections/worked.ts';
import type { PriceTurn } from './price-turn.ts';

const wanted = (job: Job): Job => ({
  ...job,
  answers: [
    ...job.answers.filter(({ question }) => question !== SURGE_QUESTION),
    { question: SURGE_QUESTION, value: 'wanted', certainty: 'seen' },
  ],
});

/** A new board, and nobody has asked the owner about surge protection: where it is wanted, a device goes in. */
export const surgeTurns = (worked: Worked): readonly PriceTurn[] =>
  surgeIsOpen(worked)
    ? [{ question: SURGE_QUESTION, subjectId: 'supply', cheaper: [], dearer: [{ job: wanted }] }]
    : [];
