import { z } from 'zod';
import { definesId, type EntityKind, refersTo } from './id-roles.ts';

/** An id as the job file carries it: opaque, made at the edge, without `/` (derived things use that). */
export const id = z
  .string()
  .regex(/^[^/\s\p{C}]{1,64}$/u, 'must be an id: 1 to 64 characters, no spaces and no "/"');

/** The id that a thing of this kind goes by; the reader holds it to be the only one. */
export function idOf(kind: EntityKind): typeof id {
  const schema = id.meta({ description: `The id of this ${kind}.` });
  definesId(schema, kind);
  return schema;
}

/**
 * A reference: the id of a thing that the job must hold, of one of these kinds.
 *
 * @param besides words that may stand there instead of an id, by the group that holds the reference.
 */
export function idRef(
  kinds: EntityKind | readonly EntityKind[],
  besides?: (owner: unknown) => readonly string[],
) {
  const list = typeof kinds === 'string' ? [kinds] : kinds;
  const schema = id.meta({ description: `The id of a ${list.join(', or a ')} of this job.` });
  refersTo(schema, list, besides);
  return schema;
}

/** A label or a line of text that people read. */
export const text = z.string();

/** A length in mm that cannot be negative; 1 km is beyond any house. */
export const lengthMm = z.number().min(0).max(1_000_000);

/** A length in mm that must be more than nothing. */
export const sizeMm = z.number().positive().max(1_000_000);

/** A height in mm above a storey's finished floor; negative lies in the void below it. */
export const heightMm = z.number().min(-20_000).max(20_000);

/** A plan position `[x, y]` in mm, x to the right and y up. */
export const planAt = z
  .tuple([z.number().min(-1e6).max(1e6), z.number().min(-1e6).max(1e6)])
  .meta({ id: 'PlanAt' });

/** A conductor's nominal area, more than nothing. */
export const areaMm2 = z.number().positive().max(1000);

/** A current or a rating in A, more than nothing. */
export const currentA = z.number().positive().max(10_000);

/** A resistance or an impedance in Ω; nought is what a shorted instrument shows. */
export const resistanceOhm = z.number().min(0).max(1e7);

/** A share of a hundred. */
export const percent = z.number().min(0).max(100);

/** Whole pence. */
export const pence = z.int().min(0).max(1_000_000_000);

/** A day, written 2025-03-31. */
export const isoDate = z.iso.date();

/** How a surveyed fact is known. A given field not named counts as seen, an absent one as unknown. */
export const certainty = z.enum(['seen', 'measured', 'assumed', 'unknown']);
export type Certainty = z.infer<typeof certainty>;

/** Certainty by field of the entity that carries it. */
export const certaintyByField = z
  .record(z.string().min(1).max(64), certainty)
  .meta({ id: 'CertaintyByField' });
export type CertaintyByField = z.infer<typeof certaintyByField>;
