import type { z } from 'zod';

/** The kinds of thing that go by an id. */
export type EntityKind =
  | 'storey'
  | 'wall'
  | 'opening'
  | 'room'
  | 'fixture'
  | 'board'
  | 'RCD'
  | 'circuit'
  | 'point'
  | 'leg'
  | 'reading'
  | 'asset'
  | 'scheme'
  | 'connection'
  | 'extra'
  | 'instrument';

/** What an id stands there for: it names its own group, or it refers to another one. */
export type IdRole =
  | { readonly role: 'defines'; readonly kind: EntityKind }
  | {
      readonly role: 'refers';
      readonly kinds: readonly EntityKind[];
      /** Words that may stand there instead of an id. */
      readonly besides: (owner: unknown) => readonly string[];
    };

// Kept beside the schemas rather than in a list of paths, so that no reference can be added and left unchecked.
const roles = new WeakMap<z.ZodType, IdRole>();

/** Marks a schema as the id of a thing of this kind. */
export function definesId(schema: z.ZodType, kind: EntityKind): void {
  roles.set(schema, { role: 'defines', kind });
}

/** Marks a schema as a reference to a thing of one of these kinds. */
export function refersTo(
  schema: z.ZodType,
  kinds: readonly EntityKind[],
  besides: (owner: unknown) => readonly string[] = () => [],
): void {
  roles.set(schema, { role: 'refers', kinds, besides });
}

/** The role of an id's schema; undefined for every other schema. */
export function idRole(schema: z.ZodType): IdRole | undefined {
  return roles.get(schema);
}
