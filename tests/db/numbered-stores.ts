import type { JobHeading, JobStore, LibraryStore, SaveHow, Stores, Version } from '../../api/db/stores.ts';

type NumberedJobs = Omit<JobStore, 'save' | 'remove'> & {
  readonly save: (
    heading: JobHeading,
    text: string,
    base: number,
    how: SaveHow,
  ) => ReturnType<JobStore['save']>;
  readonly remove: (id: string, base: number) => ReturnType<JobStore['remove']>;
};

type NumberedLibrary = Omit<LibraryStore, 'save'> & {
  readonly save: (text: string, base: number) => ReturnType<LibraryStore['save']>;
};

/** Stores that take the number of a revision alone, for tests in which one number never has two texts. */
export interface NumberedStores extends Omit<Stores, 'jobs' | 'library'> {
  readonly jobs: NumberedJobs;
  readonly library: NumberedLibrary;
}

/** The tags that answers told, by whose and number. */
class ToldTags {
  readonly #tags = new Map<string, string>();

  /** Passes an answer on, and remembers the version that it tells. */
  async note<Answer extends object | null>(whose: string, answer: Promise<Answer>): Promise<Answer> {
    const told: Partial<Version> = (await answer) ?? {};
    if (told.revision !== undefined && told.tag !== undefined)
      this.#tags.set(`${whose} ${told.revision}`, told.tag);
    return answer;
  }

  /** A number that nobody was told of has a tag that nothing has. */
  version(whose: string, revision: number): Version {
    return { revision, tag: this.#tags.get(`${whose} ${revision}`) ?? 'nobody was told' };
  }
}

/** The stores with each version known by its number, once an answer has told of it. */
export function numberedStores({ jobs, library, ...others }: Stores): NumberedStores {
  const ofJobs = new ToldTags();
  const ofLibrary = new ToldTags();
  return {
    ...others,
    jobs: {
      ...jobs,
      create: (heading, text) => ofJobs.note(heading.id, jobs.create(heading, text)),
      read: (id) => ofJobs.note(id, jobs.read(id)),
      readRevision: (id, revision) => ofJobs.note(id, jobs.readRevision(id, revision)),
      restore: (id) => ofJobs.note(id, jobs.restore(id)),
      save: (heading, text, base, how) =>
        ofJobs.note(heading.id, jobs.save(heading, text, ofJobs.version(heading.id, base), how)),
      remove: (id, base) => ofJobs.note(id, jobs.remove(id, ofJobs.version(id, base))),
    },
    library: {
      ...library,
      read: () => ofLibrary.note('', library.read()),
      save: (text, base) => ofLibrary.note('', library.save(text, ofLibrary.version('', base))),
    },
  };
}
