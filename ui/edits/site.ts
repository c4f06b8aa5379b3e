import type { Site } from '#model/building.ts';
import type { Certainty } from '#model/primitives.ts';
import type { JobEdit } from '../job-events.ts';
import { type FactOf, type FactValue, putCertainty, putFact } from './facts.ts';

/** The names of the house's facts. */
export type SiteFact = FactOf<Site>;

/** Sets a fact of the house; null takes it away where it need not be there. */
export const setSiteFact = <K extends SiteFact>(fact: K, value: FactValue<Site, K>): JobEdit => ({
  label: 'Change what is known of the house',
  change: ({ site }) => putFact<Site, K>(site, fact, value),
});

/** Says how sure a fact of the house is. */
export const setSiteCertainty = (fact: SiteFact, certainty: Certainty): JobEdit => ({
  label: 'Change how sure a fact of the house is',
  change: ({ site }) => putCertainty(site, fact, certainty),
});

/** Sets the address, a line each; empty lines are left out. */
export const setSiteAddress = (text: string): JobEdit => ({
  label: 'Change the address',
  change: ({ site }) => {
    site.address = text
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== '');
  },
});

/** Sets the job's title or its reference. */
export const setJobName = (name: 'title' | 'reference', value: string): JobEdit => ({
  label: `Change the ${name}`,
  change: (job) => {
    job[name] = value;
  },
});
