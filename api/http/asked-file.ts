import { fileWord } from '#exports/file-word.ts';
import { type Papers, papersOf } from '#exports/papers.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { problemAnswers } from './answers.ts';
import type { FirmParts } from './app-parts.ts';
import { dayAsked, noSuchScheme } from './asked-papers.ts';
import { firmLibrary } from './firm-library.ts';
import { storedJob } from './stored-job.ts';

/** The answer of a route that gives a file to be kept. */
export const file = (description: string, mediaType: string) => ({
  200: {
    description,
    headers: {
      'Content-Disposition': {
        schema: { type: 'string' as const },
        description: 'attachment, with a file name made of the job’s reference and title.',
      },
    },
    content: { [mediaType]: { schema: { type: 'string' as const, format: 'binary' } } },
  },
});

/** What a route that gives a paper of one scheme may refuse with. */
export const exportProblems = problemAnswers(
  'no-such-job',
  'no-such-scheme',
  'job-unreadable',
  'library-unreadable',
);

/** The headers of a file to be kept under a name made of the job's reference and title. */
export function fileHeaders(
  { reference, title, id }: Pick<Job, 'reference' | 'title' | 'id'>,
  name: string,
  mediaType: string,
): Record<string, string> {
  const stem = fileWord(`${reference} ${title}`, fileWord(id, 'job'));
  return { 'Content-Type': mediaType, 'Content-Disposition': `attachment; filename="${stem}-${name}"` };
}

/** Which job’s papers are asked for, of which day and scheme. */
export interface Asked {
  readonly id: string;
  readonly date: string | undefined;
  readonly scheme?: string | undefined;
}

/** A stored job with the papers asked for. */
export interface AskedPapers {
  readonly job: Job;
  readonly library: Library;
  readonly papers: Papers;
}

/** Reads a job and works out its papers, by the firm’s library; refuses a job and a scheme that are not there. */
export async function askedPapers(parts: FirmParts, { id, date, scheme }: Asked): Promise<AskedPapers> {
  const { job, revision } = await storedJob(parts.stores.jobs, id);
  const { library } = await firmLibrary(parts.stores.library, parts.demoLibrary);
  const options = { date: dayAsked(date, parts.now), revision, schemeId: scheme || null };
  const papers = papersOf(job, library, options);
  if (papers === null) throw noSuchScheme(job, scheme ?? '');
  return { job, library, papers };
}
