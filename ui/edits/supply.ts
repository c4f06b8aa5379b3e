import { bondFact, type Service } from '#engine/rules/bonds.ts';
import type { Supply } from '#model/installation.ts';
import type { Certainty } from '#model/primitives.ts';
import type { JobEdit } from '../job-events.ts';
import { type FactOf, type FactValue, putCertainty, putFact } from './facts.ts';

/** The supply's facts that are set one by one. */
export type SupplyFact = Exclude<
  FactOf<Supply>,
  'nominalV' | 'bonding' | 'absentServices' | 'otherSources' | 'photos'
>;
type Bond = Supply['bonding'][number];
/** What is there of a service's bond: the bond, that it has none, or that no such service is there. */
export type BondFound = Omit<Bond, 'service'> | 'no-service';
/** A source beside the distributor's. */
export type OtherSource = Supply['otherSources'][number];

/** Sets a fact of the supply; null takes it away. */
export const setSupplyFact = <K extends SupplyFact>(fact: K, value: FactValue<Supply, K>): JobEdit => ({
  label: 'Change the supply',
  change: ({ supply }) => putFact<Supply, K>(supply, fact, value),
});

/** Says how sure a fact of the supply is. */
export const setSupplyCertainty = (fact: SupplyFact | 'otherSources', certainty: Certainty): JobEdit => ({
  label: 'Change how sure a fact of the supply is',
  change: ({ supply }) => putCertainty(supply, fact, certainty),
});

/** Records the other sources, none of them by an empty list; null: nobody looked. */
export const setOtherSources = (sources: readonly OtherSource[] | null): JobEdit => ({
  label: 'Change the other sources',
  change: ({ supply }) => {
    supply.otherSources = [...(sources ?? [])];
    putCertainty(supply, 'otherSources', sources === null ? 'unknown' : null);
  },
});

/** Records what was found of a service's bond, one a service; null: nobody looked. */
export const setBond = (service: Service, found: BondFound | null): JobEdit => ({
  label: `Change the bond to ${service}`,
  change: ({ supply }) => {
    const place = supply.bonding.findIndex((known) => known.service === service);
    const others = supply.bonding.filter((known) => known.service !== service);
    const absent = (supply.absentServices ?? []).filter((known) => known !== service);
    if (found === 'no-service') absent.push(service);
    else if (found !== null) others.splice(place < 0 ? others.length : place, 0, { service, ...found });
    if (found === null) putCertainty(supply, bondFact(service), null);
    supply.bonding = others;
    if (absent.length > 0) supply.absentServices = absent;
    else delete supply.absentServices;
  },
});

/** Says how sure what was found of a service's bond is, whatever was said of all bonds together. */
export const setBondCertainty = (service: Service, certainty: Certainty): JobEdit => ({
  label: `Change how sure the bond to ${service} is`,
  change: ({ supply }) => {
    // Said of all bonds before, so that seen has to be said of this one.
    if (certainty === 'seen' && supply.certainty?.bonding !== undefined)
      supply.certainty = { ...supply.certainty, [bondFact(service)]: 'seen' };
    else putCertainty(supply, bondFact(service), certainty);
  },
});
