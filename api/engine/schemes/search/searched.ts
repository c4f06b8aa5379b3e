import type { Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { WaysOfHouse } from '../../ways/way-cost.ts';
import { movedHouse } from '../work-scheme.ts';
import { nothingKept } from './kept-costs.ts';
import type { SearchOptions, ToSearch } from './search.ts';
import { waysInHouse } from './ways-in-house.ts';

/** What is kept of a search for the next one. */
export interface Searched {
  readonly job: Job;
  /** The locked connections, as text. */
  readonly locked: string;
  readonly toSearch: ToSearch;
  readonly ways: WaysOfHouse;
}

interface Asked {
  readonly job: Job;
  readonly options: SearchOptions;
  readonly begin: () => ToSearch;
}

/** What the next search starts from: all that was found out of the same house, or nothing where it is another. */
export function searchedAgain(last: Searched | null, { job, options, begin }: Asked): Searched {
  const locked = JSON.stringify(options.locked ?? []);
  if (last === null || !isSameHouse(last.job, job) || (options.ways ?? last.ways) !== last.ways) {
    const toSearch = { ...begin(), kept: nothingKept(), verdicts: new Map() };
    return { job, locked, toSearch, ways: options.ways ?? waysInHouse(toSearch.house, toSearch.library) };
  }
  const house = job === last.job ? last.toSearch.house : movedHouse(last.toSearch.house, job);
  // What is locked may change what any end costs; verdicts say themselves what they are of.
  const known = last.toSearch.kept;
  const kept =
    known !== undefined && locked === last.locked && known.ends.size < MOST_ENDS ? known : nothingKept();
  return { ...last, job, locked, toSearch: { ...last.toSearch, house, kept } };
}

/** Every place that a point passes while it is moved is an end; with more of them than this all is let go. */
const MOST_ENDS = 5000;

/** What a search reads of a job beside its points. */
const readOf = [
  'edition',
  'site',
  'storeys',
  'supply',
  'boards',
  'circuits',
  'legs',
  'readings',
  'answers',
  'terms',
  'stock',
] as const satisfies readonly (keyof Job)[];

/** Whether two states of a job, which share what did not change, differ in the places of wanted points alone. */
function isSameHouse(a: Job, b: Job): boolean {
  return (
    readOf.every((key) => a[key] === b[key]) &&
    a.points.length === b.points.length &&
    a.points.every((point, i) => isSamePoint(point, b.points[i]))
  );
}

function isSamePoint(a: Point, b: Point | undefined): boolean {
  if (a === b) return true;
  if (b === undefined || a.status !== 'wanted' || a.replaces !== undefined) return false;
  return JSON.stringify({ ...a, place: null }) === JSON.stringify({ ...b, place: null });
}
