import type { Storey } from '#model/building.ts';
import type { Job } from '#model/job.ts';

/** A storey of a draft that is drawn on: the house is changed in place, and what stands on its walls with it. */
export interface Drawing {
  readonly job: Job;
  readonly storey: Storey;
  /** Ids for the walls that it makes. */
  readonly newId: () => string;
}

/** What came of it: done, or why not, in words; then the draft is not to be kept. */
export type Outcome = { readonly ok: true } | Refused;

/** Why it cannot be done. */
export interface Refused {
  readonly ok: false;
  readonly why: string;
  /** Of a room that a wall runs through: which side, as it lies on the plan, has to come in, and by how much; absent or null where that is of no use. */
  readonly cut?: { readonly side: 'left' | 'right' | 'upper' | 'lower'; readonly byMm: number } | null;
}

export const done: Outcome = { ok: true };
export const refused = (why: string): Refused => ({ ok: false, why });

/** A copy that shares nothing, of plain data that may be a draft, which `structuredClone` refuses. */
export function plainCopy<T>(value: T): T {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(plainCopy) as T;
  // By hand, as a hand that drags has it done at every movement: through text it takes three times as long.
  const copy: Record<string, unknown> = {};
  for (const [key, one] of Object.entries(value)) if (one !== undefined) copy[key] = plainCopy(one);
  return copy as T;
}
