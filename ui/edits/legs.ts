import type { Leg } from '#model/installation.ts';
import type { Certainty } from '#model/primitives.ts';
import type { JobEdit } from '../job-events.ts';
import { type FactValue, putCertainty, putFact } from './facts.ts';

/** The facts of a leg that forms set; its way is drawn. */
export type LegFact = 'circuit' | 'from' | 'to' | 'cable' | 'lengthMm' | 'channel';

/** Adds a leg between two ends. */
export const addLeg = (
  leg: Pick<Leg, 'id' | 'circuit' | 'from' | 'to' | 'cable'>,
  name: string,
): JobEdit => ({
  label: `Add the cable ${name}`,
  change: ({ legs }) => {
    legs.push(structuredClone(leg));
  },
});

/**
 * Sets a fact of a leg; null takes it away where it need not be there. Its certainty goes by other names: length,
 * route. Of another circuit, its ends at the board are that circuit's.
 */
export const setLegFact = <K extends LegFact>(
  id: string,
  name: string,
  fact: K,
  value: FactValue<Leg, K>,
): JobEdit => ({
  label: `Change the cable ${name}`,
  change: ({ legs }) => {
    const leg = legs.find((each) => each.id === id);
    if (leg === undefined) return;
    putFact<Leg, K>(leg, fact, value);
    if (fact === 'lengthMm' && value === null) putCertainty(leg, 'length', null);
    if (fact === 'circuit')
      for (const end of [leg.from, leg.to]) if ('origin' in end) end.origin = leg.circuit;
  },
});

/** Says how sure a leg's length, its route or its cable is. Of a route, seen is said: no field of the file stands for it. */
export const setLegCertainty = (
  id: string,
  name: string,
  fact: 'length' | 'route' | 'cable',
  certainty: Certainty,
): JobEdit => ({
  label: `Change how sure the ${fact} of ${name} is`,
  change: ({ legs }) => {
    const leg = legs.find((each) => each.id === id);
    if (leg === undefined) return;
    putCertainty(leg, fact, certainty);
  },
});
