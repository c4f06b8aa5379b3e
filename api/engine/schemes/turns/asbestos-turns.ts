import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import type { Worked } from '../../connections/worked.ts';
import { ASBESTOS_SUM, asbestosIsOpen } from '../../rules/asbestos.ts';
import type { PriceTurn } from './price-turn.ts';

const suspected = (job: Job): Job => ({
  ...job,
  answers: [
    ...job.answers.filter(({ question }) => question !== 'asbestos'),
    { question: 'asbestos', value: 'suspected', certainty: 'seen' },
  ],
});

/** Asbestos that nobody has looked for: where it is suspected, it is sampled, at the firm's sum for it. */
export function asbestosTurns({ job }: Worked, { norms }: Library): readonly PriceTurn[] {
  const isPriced = norms.sums.some(({ sum }) => sum === ASBESTOS_SUM);
  return isPriced && asbestosIsOpen(job)
    ? [{ question: 'asbestos', subjectId: 'site', cheaper: [], dearer: [{ job: suspected }] }]
    : [];
}
