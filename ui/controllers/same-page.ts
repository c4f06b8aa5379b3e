import type { JobView } from '../job-view.ts';

/** What a page says of a job besides its view. */
export interface PageWords {
  readonly said: string;
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
}

/**
 * Whether a page that shows one view shows the other as well: all that it is drawn from is the same, but for how the search
 * stands, which is told past the page while a point is under the hand.
 */
export function isSamePage(one: JobView & PageWords, other: JobView & PageWords): boolean {
  const keys = Object.keys(other) as (keyof (JobView & PageWords))[];
  return (
    keys.every((key) => key === 'ways' || one[key] === other[key]) &&
    one.ways.tried === other.ways.tried &&
    one.ways.question === other.ways.question
  );
}
