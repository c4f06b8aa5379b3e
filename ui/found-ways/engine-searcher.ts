import { findSchemes, whatIfLegRuns, whyNotConnect } from '#engine/find-schemes.ts';
import type { SearchOptions } from '#engine/schemes/search/search.ts';
import type { HouseAsk } from './search-asks.ts';
import type { Searcher } from './searcher.ts';

const optionsOf = ({ job, locked, cutsAssumed }: HouseAsk): SearchOptions => ({
  locked,
  allowAssumedLegs: cutsAssumed ? job.legs.map(({ id }) => id) : [],
});

/** The search of the engine itself. */
export const engineSearcher: Searcher = {
  search: (house) => findSchemes(house.job, house.library, optionsOf(house)),
  whyNot: (house, connection) =>
    whyNotConnect(house.job, house.library, { connection, options: optionsOf(house) }),
  whatIf: (house, legId, via) => {
    const options = { ...optionsOf(house), aim: 'pence' as const, most: 1, kinds: false };
    const { now, then } = whatIfLegRuns(house.job, house.library, { legId, via, options });
    return { before: now, after: then };
  },
};
