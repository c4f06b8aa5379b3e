/** A document that was changed here and elsewhere since both had the same. */
export interface BothChanged<T> {
  readonly base: T;
  readonly mine: T;
  readonly theirs: T;
}

/** How a document goes on with what was changed elsewhere. */
export interface Merged<T> {
  /** What a state from here is with their changes: that of now, and those that can be undone to. */
  readonly carry: (state: T) => T;
  /** What came in from there, in words. */
  readonly cameIn: string;
}

/** What somebody else saved while it was changed here. */
export interface Theirs<T> {
  readonly value: T;
  readonly revision: number;
  /** ISO; null where it is not told. */
  readonly savedAt: string | null;
}
