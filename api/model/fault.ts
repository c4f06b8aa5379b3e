import type { EntityKind } from './id-roles.ts';
import type { FilePath } from './schema-walk.ts';

/** Why a file cannot be read, in words that are enough to mend it by hand. */
export interface Fault {
  /** Where: `points[3].place.wall`, `line 4, column 12` of a text that is no JSON, or `file` for all of it. */
  readonly path: string;
  readonly code: Flaw['code'] | 'not-json';
  /** In what thing, and what was found there; without a full stop. */
  readonly message: string;
  /** What to do about it; without a full stop. */
  readonly remedy: string;
}

/** A bound that a number may reach, or must stay short of. */
export interface Bound {
  readonly limit: number;
  readonly inclusive: boolean;
}

/** A fault as data: what `fault-words.ts` puts into words. */
export type Flaw = { readonly path: FilePath } & (
  | { readonly code: 'missing'; readonly expected: string }
  | { readonly code: 'wrong-type'; readonly expected: string; readonly found: string }
  | { readonly code: 'unknown-key'; readonly allowed: readonly string[]; readonly meant: string | undefined }
  | {
      readonly code: 'unknown-value';
      readonly allowed: readonly unknown[];
      readonly found: string;
      readonly meant: string | undefined;
    }
  | {
      readonly code: 'out-of-range';
      readonly least: Bound | undefined;
      readonly most: Bound | undefined;
      readonly found: string;
    }
  | { readonly code: 'not-whole'; readonly found: string }
  | { readonly code: 'wrong-count'; readonly expected: string; readonly count: number }
  | { readonly code: 'wrong-length'; readonly least: number; readonly most: number; readonly length: number }
  | { readonly code: 'bad-id'; readonly found: string }
  | { readonly code: 'bad-date'; readonly found: string }
  | { readonly code: 'unclear-shape'; readonly shapes: readonly string[]; readonly found: string }
  | { readonly code: 'not-allowed'; readonly reason: string; readonly found: string }
  | {
      readonly code: 'duplicate-id';
      readonly id: string;
      readonly kind: EntityKind;
      readonly first: FilePath;
      readonly firstKind: EntityKind;
    }
  | {
      readonly code: 'dangling-reference';
      readonly id: string;
      readonly kinds: readonly EntityKind[];
      /** What does go by that id, if anything. */
      readonly instead: { readonly kind: EntityKind; readonly path: FilePath } | undefined;
      /** The ids that could stand there, in the file's order. */
      readonly choices: readonly string[];
      readonly words: readonly string[];
      readonly meant: string | undefined;
    }
  | { readonly code: 'wrong-format'; readonly format: string; readonly found: string }
  | { readonly code: 'newer-version'; readonly version: number; readonly current: number }
  | { readonly code: 'no-upgrade'; readonly version: string; readonly current: number }
  | { readonly code: 'upgrade-failed'; readonly version: number; readonly reason: string }
);
