import type { Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { WaysOfHouse } from '../../ways/way-cost.ts';
import { movedHouse } from '../work-scheme.ts';
import { plainWays } from './plain-ways.ts';
import type { SearchOptions, ToSearch } from './search.ts';

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
    const toSearch = { ...begin(), kept: new Map(), verdicts: new Map() };
    return { job, locked, toSearch, ways: options.ways ?? plainWays(toSearch.house, toSearch.library) };
  }
  const house = job === last.job ? last.toSearch.house : movedHouse(last.toSearch.house, job);
  // What is locked may change what any end costs; verdicts say themselves what they are of.
  const kept = locked === last.locked ? last.toSearch.kept : new Map<string, number>();
  return { ...last, job, locked, toSearch: { ...last.toSearch, house, ...(kept && { kept }) } };
}

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
