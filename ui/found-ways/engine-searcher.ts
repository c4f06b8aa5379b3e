import { estimate } from '#engine/estimate.ts';
import {
  type Searcher as EngineSearcher,
  searcher as engineSearcherOf,
  whatIfLegRuns,
  whyNotConnect,
} from '#engine/find-schemes.ts';
import type { FirstFound } from '#engine/schemes/search/found-schemes.ts';
import type { SearchOptions } from '#engine/schemes/search/search.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { withPartsOf } from './parts-of.ts';
import type { HouseAsk } from './search-asks.ts';
import type { Searcher } from './searcher.ts';
import { standsAgainst } from './stands-against.ts';

/** How many schemes are priced in full for a question: what costs least to do has not always the lowest price. */
const ASKED = 10;

const optionsOf = ({ job, locked, cutsAssumed }: HouseAsk): SearchOptions => ({
  locked,
  allowAssumedLegs: cutsAssumed ? job.legs.map(({ id }) => id) : [],
});

/**
 * The search of the engine itself. It keeps what it found out of the house that it was asked for last; what comes from
 * another thread is a copy each time, so the parts that did not change are put back first.
 */
export function engineSearcher(): Searcher {
  let last: { readonly library: Library; readonly kept: EngineSearcher; readonly job: Job } | null = null;
  return {
    search(house) {
      const library = last === null ? house.library : withPartsOf(house.library, last.library);
      const kept = last !== null && library === last.library ? last.kept : engineSearcherOf(library);
      const job = last === null ? house.job : withPartsOf(house.job, last.job);
      last = { library, kept, job };
      return kept.steps(job, optionsOf(house));
    },
    priced: (house, first) => pricedFirst(last?.job ?? house.job, last?.library ?? house.library, first),
    against: ({ job, library, locked }) => standsAgainst(job, library, locked),
    whyNot: (house, connection) =>
      whyNotConnect(house.job, house.library, { connection, options: optionsOf(house) }),
    whatIf: (house, legId, via) => {
      const options = { ...optionsOf(house), aim: 'pence' as const, most: ASKED, kinds: false };
      const { now, then } = whatIfLegRuns(house.job, house.library, { legId, via, options });
      return { before: now, after: then };
    },
  };
}

/** Neither the date nor the revision changes a price. */
const anyDay = { date: '2000-01-01', revision: 1 };

function pricedFirst(
  job: Job,
  library: Library,
  { scheme, kind, worksPence, worksPoints, restsOn }: FirstFound,
) {
  const { schemes } = estimate({ ...job, schemes: [scheme] }, library, anyDay, { depth: 'live' });
  const [worked] = schemes;
  if (worked === undefined) throw new Error(`The found scheme ${scheme.id} was not worked out.`);
  return { scheme, kind, worksPence, worksPoints, restsOn, estimate: worked };
}
