import type { Fault } from '#model/fault.ts';
import type { Asset, Job } from '#model/job.ts';
import { readJobText } from '#model/read-job.ts';
import { archiveBounds, JOB_ENTRY, pictureEndings, pictureOfEntry } from './archive-entries.ts';
import { type ArchiveFault, UnreadableArchive } from './archive-fault.ts';
import { type ImageType, imageKind } from './image-kind.ts';
import { pictureId } from './picture-id.ts';
import { type Entry, entriesOf } from './unpack.ts';

/** A picture of an archive. */
export interface ArchivedPicture {
  readonly id: string;
  readonly mediaType: ImageType;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** A job with its pictures, or why there is none. */
export type ReadArchive =
  | {
      readonly ok: true;
      readonly job: Job;
      /** The text of its file, to the byte. */
      readonly jobText: string;
      /** Those that the job names and the archive has, by id. */
      readonly pictures: readonly ArchivedPicture[];
      /** Those that the job names and the archive has not, in the job's order. */
      readonly missing: readonly Asset[];
    }
  /** The archive itself cannot be read; of several reasons the first. */
  | { readonly ok: false; readonly what: 'archive'; readonly fault: ArchiveFault }
  /** The job file in it cannot. */
  | { readonly ok: false; readonly what: 'job'; readonly faults: readonly Fault[] };

const isKnown = ({ name, isFolder }: Entry): boolean =>
  isFolder ? name === 'assets/' : name === JOB_ENTRY || pictureOfEntry(name) !== null;

/** Names are whole and few: what is called otherwise was not made here, and is not put anywhere. */
function holdNames(entries: readonly Entry[]): void {
  const strange = entries.find((entry) => !isKnown(entry));
  const jobs = entries.filter(({ name }) => name.endsWith('.json')).map(({ name }) => name);
  if (jobs.length > 1)
    throw new UnreadableArchive(
      jobs.find((name) => name !== JOB_ENTRY) ?? JOB_ENTRY,
      `it is a second job file beside ${jobs.find((name) => name === JOB_ENTRY) ?? jobs[0]}`,
      'Open one job at a time: take the other file out of the archive',
    );
  if (strange !== undefined)
    throw new UnreadableArchive(
      strange.name,
      'a job’s archive has no such file',
      `Only ${JOB_ENTRY} and pictures under assets/, named by their hash, belong in it: take this out, or fetch the archive anew`,
    );
  if (jobs.length === 0)
    throw new UnreadableArchive('file', `no job file is in it: ${JOB_ENTRY}`, 'Choose the archive of a job');
}

async function readText(entry: Entry): Promise<string> {
  const bytes = await entry.unpack(archiveBounds.jobBytes);
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new UnreadableArchive(entry.name, 'it is no text in UTF-8', 'Fetch the archive anew');
  }
}

async function readPicture(entry: Entry, limitBytes: number): Promise<ArchivedPicture> {
  const bytes = await entry.unpack(Math.min(limitBytes, archiveBounds.pictureBytes));
  const named = pictureOfEntry(entry.name);
  const mediaType = imageKind(bytes);
  if (mediaType === null || pictureEndings[mediaType] !== named?.ending)
    throw new UnreadableArchive(
      entry.name,
      'it is no picture of the kind that its name says',
      'Take it out, or fetch the archive anew',
    );
  const id = pictureId(bytes);
  if (id !== named.id)
    throw new UnreadableArchive(
      entry.name,
      'it is not the picture that its name says: it was changed or damaged',
      'Fetch the archive anew, or take this picture out: the job opens without it',
    );
  return { id, mediaType, bytes };
}

async function readEntries(entries: readonly Entry[]): Promise<ReadArchive> {
  holdNames(entries);
  const jobEntry = entries.find(({ name }) => name === JOB_ENTRY);
  if (jobEntry === undefined) throw new Error('An archive without a job file was let through.');
  const jobText = await readText(jobEntry);
  const read = readJobText(jobText);
  if (!read.ok) return { ok: false, what: 'job', faults: read.faults };
  const named = new Set(read.job.assets.map(({ id }) => id));
  const pictures: ArchivedPicture[] = [];
  let left: number = archiveBounds.inflatedBytes;
  for (const entry of entries) {
    if (entry.isFolder || entry === jobEntry) continue;
    const picture = await readPicture(entry, left);
    left -= picture.bytes.length;
    if (named.has(picture.id)) pictures.push(picture);
  }
  const there = new Set(pictures.map(({ id }) => id));
  const missing = read.job.assets.filter(({ id }) => !there.has(id));
  return { ok: true, job: read.job, jobText, pictures, missing };
}

/**
 * Reads a job with its pictures from a ZIP archive: all of it, or none. Names, sizes as they come out, kinds and hashes are
 * checked before anything is handed on; what the archive says of itself is not relied on. Pictures that the job does not name
 * are left out.
 */
export async function readArchive(bytes: Uint8Array): Promise<ReadArchive> {
  try {
    return await readEntries(await entriesOf(bytes));
  } catch (error) {
    if (error instanceof UnreadableArchive) return { ok: false, what: 'archive', fault: error.fault };
    throw error;
  }
}
