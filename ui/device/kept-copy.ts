import type { DoneStep } from '../controllers/edit-history.ts';

/** The tag of a document that the server was never given. */
export const NEVER_SENT = '';

/** What there is to keep of a document that is being edited: enough to go on with it as if the page had never been closed. */
export interface Held<T> {
  readonly now: T;
  /** What the server has as the tag; of one that it was never given, what it began as. */
  readonly base: T;
  readonly revision: number;
  /** `NEVER_SENT` where the server was never given it. */
  readonly etag: string;
  /** What was sent without an answer so far, the oldest first: any of it may have arrived all the same. */
  readonly sent: readonly T[];
  /** The steps back, the last one last. */
  readonly done: readonly DoneStep[];
  /** The steps that were taken back, the last one last. */
  readonly undone: readonly DoneStep[];
  /** True where the server has it not. */
  readonly unsent: boolean;
}

/** What is known of a copy without reading it. */
export interface CopyHead {
  /** Of this copy alone: a document may have several, each of another tab. */
  readonly key: string;
  /** `job/<id>`, or `library`. */
  readonly name: string;
  /** The tab that writes it; no other does. */
  readonly owner: string;
  readonly etag: string;
  readonly unsent: boolean;
  /** When it was written last, by the device's clock, ISO. */
  readonly writtenAt: string;
}

/** A copy whole. Its states are as they were written, perhaps by another version: whoever takes one up reads it again. */
export interface KeptCopy {
  readonly head: CopyHead;
  readonly held: Held<unknown>;
}

/** The name that copies of a job go by. */
export const jobName = (jobId: string): string => `job/${jobId}`;

/** The job that copies of a name are of; null where they are of none. */
export const jobIdOf = (name: string): string | null => (name.startsWith('job/') ? name.slice(4) : null);

/** The name that copies of the firm's library go by. */
export const LIBRARY_NAME = 'library';
