import { isSameData } from '#engine/plan/same-data.ts';
import type { Connection, Scheme } from '#model/scheme.ts';

/** A connection without its name. */
const bare = ({ id: _id, ...rest }: Connection): unknown => rest;

const sorted = (things: readonly unknown[]): readonly string[] =>
  things.map((one) => JSON.stringify(one)).sort();

/** Whether two connections do the same, whatever they are called. */
export const isSameConnection = (one: Connection, other: Connection): boolean =>
  isSameData(bare(one), bare(other));

/** Whether two schemes do the same, whatever they and their connections are called. */
export const isSameScheme = (one: Scheme, other: Scheme): boolean =>
  isSameData(sorted(one.connections.map(bare)), sorted(other.connections.map(bare))) &&
  isSameData(sorted(one.remedies), sorted(other.remedies));

/** The scheme of a job that does what a found one does; null where it was not kept, or was changed since. */
export const keptAs = (schemes: readonly Scheme[], found: Scheme): Scheme | null =>
  schemes.find((scheme) => isSameScheme(scheme, found)) ?? null;
