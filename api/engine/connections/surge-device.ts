import type { Job } from '#model/job.ts';
import type { Worked } from './worked.ts';

/** The question of the survey that says whether the owner wants surge protection. */
export const SURGE_QUESTION = 'surge-protection';

/** What is said of surge protection; null where nobody has asked, or nobody could say. */
function surgeAnswer({ answers }: Pick<Job, 'answers'>): string | null {
  const answer = answers.find(({ question }) => question === SURGE_QUESTION);
  return answer === undefined || answer.certainty === 'unknown' ? null : String(answer.value);
}

/** Whether a board that is exchanged gets a surge device: the owner wants one. */
export const wantsSurgeDevice = (job: Pick<Job, 'answers'>): boolean => surgeAnswer(job) === 'wanted';

/** Whether a scheme exchanges a board and nobody has asked the owner about surge protection: one may have to go in. */
export const surgeIsOpen = ({ job, scheme }: Pick<Worked, 'job' | 'scheme'>): boolean =>
  surgeAnswer(job) === null && (scheme?.remedies ?? []).some(({ kind }) => kind === 'new-board');

/** A job in which the owner has said that surge protection is wanted. */
export const withSurgeWanted = (job: Job): Job => ({
  ...job,
  answers: [
    ...job.answers.filter(({ question }) => question !== SURGE_QUESTION),
    { question: SURGE_QUESTION, value: 'wanted', certainty: 'seen' },
  ],
});

/** Whether a board has a surge device once the scheme is carried out: it has one already, or is exchanged for one that gets it. */
export function hasSurgeDevice({ job, scheme }: Pick<Worked, 'job' | 'scheme'>, boardId: string): boolean {
  if (surgeAnswer(job) === 'fitted') return job.boards[0]?.id === boardId;
  const isExchanged = (scheme?.remedies ?? []).some(
    ({ kind, at }) =>
      kind === 'new-board' && (at === boardId || (at === undefined && job.boards.length === 1)),
  );
  return isExchanged && wantsSurgeDevice(job);
}
