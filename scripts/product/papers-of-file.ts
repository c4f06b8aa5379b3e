import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { type Papers, papersOf } from '#exports/papers.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { readLibraryText } from '#model/read-library.ts';
import { faultLines, Refused, readJobFile, textOf } from './job-file.ts';

/** Which papers a command is to make. */
export interface AskedOfFile {
  readonly jobPath: string;
  /** Null: the demo's. */
  readonly libraryPath: string | null;
  readonly schemeId: string | null;
  /** ISO. */
  readonly date: string;
}

/** A job file with the papers asked for. */
export interface PapersOfFile {
  readonly job: Job;
  readonly library: Library;
  readonly papers: Papers;
}

/** Reads a library file; a faulty one is refused. */
export async function readLibraryFile(path: string | null): Promise<Library> {
  if (path === null) return demoLibrary();
  const read = readLibraryText(await textOf(path, 'library file'));
  if (!read.ok) throw new Refused(faultLines(path, 'library', read.faults));
  return read.library;
}

/** Reads job and library and works out the papers; refuses faulty files and a scheme that the job does not have. */
export async function papersOfFile({
  jobPath,
  libraryPath,
  schemeId,
  date,
}: AskedOfFile): Promise<PapersOfFile> {
  const job = await readJobFile(jobPath);
  const library = await readLibraryFile(libraryPath);
  const papers = papersOf(job, library, { date, revision: 1, schemeId });
  if (papers === null) {
    const known = job.schemes.map((scheme) => `  ${scheme.id}  ${scheme.name}`).join('\n');
    throw new Refused(`--scheme ${schemeId}: the job has no such scheme. It has:\n${known || '  none'}`);
  }
  return { job, library, papers };
}
