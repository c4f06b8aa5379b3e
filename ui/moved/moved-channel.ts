import type { WaysView } from '../controllers/way-finder.ts';
import type { MovedSight } from './moved-sight.ts';

/** How the search stands. */
export type SearchStand = Pick<WaysView, 'search' | 'isOfNow'>;

/** What follows a point under the hand. */
export interface Moved {
  /** As it was worked out last; null before the first time. */
  readonly sight: MovedSight | null;
  /** How the search for ways stands meanwhile; null where nothing is searched for. */
  readonly search: SearchStand | null;
}

/** What was worked out, of what follows the hand. */
export const sightIn = ({ sight }: Moved): MovedSight | null => sight;

/**
 * Tells the few elements that follow the hand what has moved, past the page: all else stays as it was drawn. The channel
 * of a job stays the same one; what it holds is replaced whole.
 */
export class MovedChannel {
  #now: Moved | null = null;
  readonly #listeners = new Set<() => void>();

  /** Null while nothing moves, or the page itself shows what moves. */
  get now(): Moved | null {
    return this.#now;
  }

  /** @returns what ends the listening. */
  listen(then: () => void): () => void {
    this.#listeners.add(then);
    return () => this.#listeners.delete(then);
  }

  tell(now: Moved | null): void {
    if (now === this.#now) return;
    this.#now = now;
    for (const then of this.#listeners) then();
  }
}
