import { errorWords } from '../error-words.ts';
import { handOut } from '../fetch-as-file.ts';
import { counted } from '../written.ts';
import { archiveName, archiveOf } from './job-archive.ts';
import type { JobDesk } from './job-desk.ts';
import type { Pictures } from './pictures.ts';

/** Hands out the job on a desk with its pictures as one file, and says which could not be put into it. */
export async function packJob(
  desk: Pick<JobDesk, 'session' | 'say'>,
  pictures: Pick<Pictures, 'see'>,
): Promise<void> {
  const job = desk.session?.now;
  if (job === undefined) return;
  try {
    const { file, missing } = await archiveOf(job, pictures);
    handOut(archiveName(job), file);
    if (missing.length > 0)
      desk.say(
        `The file is made without ${counted(missing.length, 'picture')} that ${missing.length === 1 ? 'is' : 'are'} not on this device: ${missing.map(({ name }) => name).join(', ')}.`,
      );
  } catch (error) {
    desk.say(`The file could not be made: ${errorWords(error)}`);
  }
}
