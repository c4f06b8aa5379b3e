import type { Supply } from '#model/installation.ts';
import type { Certainty } from '#model/primitives.ts';
import type { JobEdit } from '../job-events.ts';
import { type FactOf, type FactValue, putCertainty, putFact } from './facts.ts';

/** The supply's facts that are set one by one. */
export type SupplyFact = Exclude<FactOf<Supply>, 'nominalV' | 'bonding'>;
type Bond = Supply['bonding'][number];
/** A service that wants a main bond. */
export type Service = Bond['service'];

/** Sets a fact of the supply; null takes it away. */
export const setSupplyFact = <K extends SupplyFact>(fact: K, value: FactValue<Supply, K>): JobEdit => ({
  label: 'Change the supply',
  change: ({ supply }) => putFact<Supply, K>(supply, fact, value),
});

/** Says how sure a fact of the supply is. */
export const setSupplyCertainty = (fact: SupplyFact | 'bonding', certainty: Certainty): JobEdit => ({
  label: 'Change how sure a fact of the supply is',
  change: ({ supply }) => putCertainty(supply, fact, certainty),
});

/** Records the bond of a service, one a service; null: the house has no such service, or nobody looked. */
export const setBond = (service: Service, bond: Omit<Bond, 'service'> | null): JobEdit => ({
  label: `Change the bond to ${service}`,
  change: ({ supply }) => {
    const place = supply.bonding.findIndex((known) => known.service === service);
    const others = supply.bonding.filter((known) => known.service !== service);
    if (bond !== null) others.splice(place < 0 ? others.length : place, 0, { service, ...bond });
    supply.bonding = others;
  },
});
