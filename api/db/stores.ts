import type { LinkStore, PeopleStore } from './people-stores.ts';
import type { AssetStore, QuotationStore } from './quotation-stores.ts';

/**
 * Which saved state is meant. The number alone does not say: a store that was put back from a copy, or another store
 * at the same address, counts the same numbers for other texts.
 */
export interface Version {
  readonly revision: number;
  /** A short word that differs between two texts of one number. */
  readonly tag: string;
}

/** One line of the list of jobs, as saved beside the job's text; never the truth about the job. */
export interface JobSummary extends Version {
  readonly id: string;
  readonly reference: string;
  readonly title: string;
  readonly customer: string;
  /** When the newest revision was saved, ISO 8601 in UTC. */
  readonly savedAt: string;
  /** When it was taken off the list, ISO 8601 in UTC; null while it is on it. */
  readonly removedAt: string | null;
  readonly wantedPoints: number;
  readonly schemes: number;
}

/** Which jobs are to be listed. */
export interface JobsAsked {
  /** True: those taken off the list, and no others. */
  readonly removed: boolean;
}

/** A version with the time of its save, ISO 8601 in UTC. */
export interface SavedVersion extends Version {
  readonly savedAt: string;
}

/** A stored text with the version that it is. */
export interface StoredText extends SavedVersion {
  readonly text: string;
}

/** Why a revision stays for good, however many saves follow it. */
export type KeptFor = 'quoted' | 'named';

/** One saved state of a job. */
export interface RevisionSummary {
  readonly revision: number;
  readonly savedAt: string;
  /** `by-hand`: a person asked for it; `autosave`: the screen kept it, and the next one may take its place. */
  readonly how: SaveHow;
  readonly keptFor: KeptFor | null;
  readonly bytes: number;
}

export type SaveHow = 'by-hand' | 'autosave';

/** What a save came to; a stale one changed nothing and says what is there now. */
export type Saved =
  | ({ readonly outcome: 'saved' } & SavedVersion)
  | ({ readonly outcome: 'stale' } & SavedVersion)
  | { readonly outcome: 'no-such-job' };

/** What came of making a job. */
export type Created = ({ readonly outcome: 'created' } & SavedVersion) | { readonly outcome: 'id-taken' };

/** What the store needs of a job's text to list it; read by the caller, who has checked the text. */
export interface JobHeading {
  readonly id: string;
  readonly reference: string;
  readonly title: string;
  readonly customer: string;
  readonly wantedPoints: number;
  readonly schemes: number;
}

/** The jobs of one firm. Every save is a new revision; numbers only rise, also after a deletion. */
export interface JobStore {
  /**
   * Newest save first, then by id; removed jobs are left out. Asked for the removed ones, those alone: last removed
   * first, then by id.
   */
  list(asked?: JobsAsked): Promise<readonly JobSummary[]>;
  create(heading: JobHeading, text: string): Promise<Created>;
  /**
   * The newest text, exactly as it was saved; null when there is no such job. A revision that was handed out
   * may be somebody's base of a merge, so it is never pruned from then on.
   */
  read(id: string): Promise<StoredText | null>;
  /** As `read`, of one revision; null when that was never there or was coalesced away. */
  readRevision(id: string, revision: number): Promise<StoredText | null>;
  /** Newest first; null when there is no such job. */
  revisions(id: string): Promise<readonly RevisionSummary[] | null>;
  /** Replaces the newest text if `base` is its version, tag and all; else `stale`, and nothing changes. */
  save(heading: JobHeading, text: string, base: Version, how: SaveHow): Promise<Saved>;
  /** Marks a revision as one to keep; false when there is no such revision. */
  keep(id: string, revision: number, keptFor: KeptFor): Promise<boolean>;
  /** Takes the job off the list; its revisions stay, and `restore` brings it back. */
  remove(id: string, base: Version): Promise<Saved>;
  /** Brings a removed job back as it was; `no-such-job` when there never was one. */
  restore(id: string): Promise<Saved>;
}

/** The firm's library: details, prices, norms, limits, terms. Every save is a new revision, none is pruned. */
export interface LibraryStore {
  /** Null before the first save. */
  read(): Promise<StoredText | null>;
  readRevision(revision: number): Promise<StoredText | null>;
  /**
   * As a job's save. The base of the first one has revision 0, and its tag says nothing here: what stands in before
   * it is not the store's. Where it is stale and nothing is stored, revision 0 is told, saved never (`savedAt` empty).
   */
  save(text: string, base: Version): Promise<Exclude<Saved, { outcome: 'no-such-job' }>>;
}

/** Facts of the firm's store itself. */
export interface FirmStore {
  /** True from the moment the demo jobs were offered once: they do not come back by themselves. */
  demosOffered(): Promise<boolean>;
  noteDemosOffered(): Promise<void>;
}

/** Everything one firm has stored. */
export interface Stores {
  readonly jobs: JobStore;
  readonly library: LibraryStore;
  readonly quotations: QuotationStore;
  readonly assets: AssetStore;
  readonly firm: FirmStore;
  readonly people: PeopleStore;
  readonly links: LinkStore;
}
