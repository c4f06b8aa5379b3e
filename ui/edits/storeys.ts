import type { Ceiling, Floor, Storey } from '#model/building.ts';
import type { Certainty } from '#model/primitives.ts';
import type { JobEdit } from '../job-events.ts';
import { type FactOf, type FactValue, putCertainty, putFact } from './facts.ts';

/** The storey's own facts that forms set; what is drawn is drawn. */
export type StoreyFact = 'name' | 'floorLevelMm' | 'heightMm';
/** The names of a floor's facts. */
export type FloorFact = FactOf<Floor>;
/** The names of a ceiling's facts. */
export type CeilingFact = FactOf<Ceiling>;

const label = (name: string): string => `Change ${name}`;

/** Sets a fact of a storey. */
export const setStoreyFact = <K extends StoreyFact>(
  { id, name }: Pick<Storey, 'id' | 'name'>,
  fact: K,
  value: FactValue<Storey, K>,
): JobEdit => ({
  label: label(name),
  change: ({ storeys }) => {
    const storey = storeys.find((each) => each.id === id);
    if (storey !== undefined) putFact<Storey, K>(storey, fact, value);
  },
});

/** Sets a fact of a storey's floor; null takes it away where it need not be there. */
export const setFloorFact = <K extends FloorFact>(
  { id, name }: Pick<Storey, 'id' | 'name'>,
  fact: K,
  value: FactValue<Floor, K>,
): JobEdit => ({
  label: label(`the floor of ${name}`),
  change: ({ storeys }) => {
    const storey = storeys.find((each) => each.id === id);
    if (storey !== undefined) putFact<Floor, K>(storey.floor, fact, value);
  },
});

/** Sets a fact of a storey's ceiling; null takes it away where it need not be there. */
export const setCeilingFact = <K extends CeilingFact>(
  { id, name }: Pick<Storey, 'id' | 'name'>,
  fact: K,
  value: FactValue<Ceiling, K>,
): JobEdit => ({
  label: label(`the ceiling of ${name}`),
  change: ({ storeys }) => {
    const storey = storeys.find((each) => each.id === id);
    if (storey !== undefined) putFact<Ceiling, K>(storey.ceiling, fact, value);
  },
});

/** A fact of a storey, of its floor or of its ceiling. */
export type StoreyPart =
  | { readonly part: 'storey'; readonly fact: StoreyFact }
  | { readonly part: 'floor'; readonly fact: FloorFact }
  | { readonly part: 'ceiling'; readonly fact: CeilingFact };

/** Says how sure a fact of a storey, its floor or its ceiling is. */
export const setStoreyCertainty = (
  { id, name }: Pick<Storey, 'id' | 'name'>,
  { part, fact }: StoreyPart,
  certainty: Certainty,
): JobEdit => ({
  label: `Change how sure a fact of ${name} is`,
  change: ({ storeys }) => {
    const storey = storeys.find((each) => each.id === id);
    if (storey !== undefined) putCertainty(part === 'storey' ? storey : storey[part], fact, certainty);
  },
});
