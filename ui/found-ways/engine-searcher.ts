import { findSchemes, whatIfLegRuns, whyNotConnect } from '#engine/find-schemes.ts';
import type { Searcher } from './searcher.ts';

/** The search of the engine itself. */
export const engineSearcher: Searcher = {
  search: ({ job, library, locked }) => findSchemes(job, library, { locked }),
  whyNot: ({ job, library, locked }, connection) =>
    whyNotConnect(job, library, { connection, options: { locked } }),
  whatIf: ({ job, library, locked }, legId, via) => {
    const { now, then } = whatIfLegRuns(job, library, {
      legId,
      via,
      options: { locked, most: 1, kinds: false },
    });
    return { before: now, after: then };
  },
};
