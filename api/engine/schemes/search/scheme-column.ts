import type { SchemeKind } from './found-schemes.ts';
import type { Part } from './search-ground.ts';
import type { Column } from './search-space.ts';
import type { CableBetween } from './shared-works.ts';
import type { Works } from './works.ts';

/** How one column joins its points; `unit`: a wanted fused unit by a cable of its own, which every kind of scheme may have. */
export type ColumnKind = Exclude<SchemeKind, 'mixed'> | 'unit';

/** A column with what it is in a scheme: the connections, the circuits that were there and that it touches, its works. */
export interface SchemeColumn extends Column {
  readonly kind: ColumnKind;
  readonly circuitIds: readonly string[];
  /** What the aim weighed. */
  readonly works: () => Works;
  readonly parts: () => readonly Part[];
  /**
   * Of the same kind and points at the same place the next dearer, with its joints elsewhere in the leg or its unit elsewhere, for
   * where a rule bars this one; the same each time, null after the last. Absent: there is no other.
   */
  readonly next?: () => SchemeColumn | null;
  /** The cables of its one connection of several, in its order; absent: it has none of several. */
  readonly cables?: () => readonly CableBetween[];
  /** What they weigh less together at the most. */
  readonly mostShared?: number;
  /**
   * The same once it is known what its cables share; the same each time. Until then its cost is a bound from below. Absent: it
   * costs what it says.
   */
  readonly settled?: () => SchemeColumn;
}
