import type { Waypoint } from '#model/cable.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import type { Connection } from '#model/scheme.ts';
import { houseToTry } from './house-to-try.ts';
import type { SearchResult, SearchStep } from './schemes/search/found-schemes.ts';
import { type SearchOptions, searchInSteps, searchSchemes } from './schemes/search/search.ts';
import { type Searched, searchedAgain } from './schemes/search/searched.ts';
import { type WhyNot, whyNot } from './schemes/search/why-not.ts';

/**
 * The front door of the search: the schemes of least works cost, those of least disturbance and some in between, all
 * passing every rule, whatever schemes the job has itself. Pure; equal arguments give equal results.
 */
export function findSchemes(job: Job, library: Library, options: SearchOptions = {}): SearchResult {
  return searchSchemes(houseToTry(job, library), options);
}

/** A search that remembers, for a screen on which points are moved. */
export interface Searcher {
  /**
   * The search a step at a time, the cheapest that passes first. What an earlier search of the same job found out is kept
   * while nothing in it changes but its wanted points: ways between places that stay, what ends cost, verdicts of the
   * rules. The answers are those of `findSchemes`.
   */
  steps(job: Job, options?: SearchOptions): Generator<SearchStep, SearchResult>;
  search(job: Job, options?: SearchOptions): SearchResult;
}

/** A searcher with nothing to remember yet. Keeps one house: that of the last job asked for. */
export function searcher(library: Library): Searcher {
  let last: Searched | null = null;
  const steps = (job: Job, options: SearchOptions = {}) => {
    last = searchedAgain(last, { job, options, begin: () => houseToTry(job, library) });
    return searchInSteps(last.toSearch, { ...options, ways: last.ways });
  };
  return {
    steps,
    search(job, options) {
      const all = steps(job, options);
      for (;;) {
        const step = all.next();
        if (step.done) return step.value;
      }
    },
  };
}

/** Why a connection is not in the best scheme found: a rule, money, or that it is not searched for. */
export function whyNotConnect(
  job: Job,
  library: Library,
  asked: { readonly connection: Connection; readonly options?: SearchOptions },
): WhyNot {
  return whyNot(houseToTry(job, library), asked.connection, asked.options ?? {});
}

/** The search as the house is told, and as it would be if one leg ran another way. */
export interface WhatIf {
  readonly now: SearchResult;
  readonly then: SearchResult;
  /** What the best scheme's full price would rise by; null where one of both has none. */
  readonly grossMorePence: number | null;
}

/** What the search would find if a leg ran by these waypoints, as if somebody had seen it. */
export function whatIfLegRuns(
  job: Job,
  library: Library,
  {
    legId,
    via,
    options = {},
  }: { readonly legId: string; readonly via: readonly Waypoint[]; readonly options?: SearchOptions },
): WhatIf {
  const legs = job.legs.map((leg) =>
    leg.id === legId
      ? { ...leg, via: [...via], certainty: { ...leg.certainty, route: 'seen' as const } }
      : leg,
  );
  const cheapest = { aim: 'pence', ...options } as const;
  const now = findSchemes(job, library, cheapest);
  const then = findSchemes({ ...job, legs }, library, cheapest);
  const [a, b] = [now, then].map(({ schemes }) => schemes[0]?.estimate.totals.grossPence ?? null);
  return { now, then, grossMorePence: a == null || b == null ? null : b - a };
}
