import { z } from 'zod';
import type { Flaw } from './fault.ts';
import { type EntityKind, type IdRole, idRole } from './id-roles.ts';
import { nearest } from './nearest.ts';
import { childSchema, type FilePath, isGroup, likelyBranch, unwrapped } from './schema-walk.ts';

interface Definition {
  readonly id: string;
  readonly kind: EntityKind;
  readonly path: FilePath;
}

interface Reference {
  readonly id: string;
  readonly role: Extract<IdRole, { role: 'refers' }>;
  readonly owner: unknown;
  readonly path: FilePath;
}

interface Found {
  readonly definitions: Definition[];
  readonly references: Reference[];
  /** Kinds of which a whole list could not be read, so that nobody can tell what it held. */
  readonly unreadable: Set<EntityKind>;
}

/**
 * Duplicate ids and dangling references of every part of a file that can be read, whatever is wrong with the rest.
 *
 * Everything with an id shares one namespace, except that a connection's id need only be its own within its
 * scheme and among the things outside the schemes. Where a whole list is unreadable, references to its kind
 * are left alone.
 */
export function referenceFlaws(schema: z.ZodType, file: unknown): Flaw[] {
  const found: Found = { definitions: [], references: [], unreadable: new Set() };
  collect({ schema, value: file, path: [], owner: undefined }, found);
  return [...duplicates(found.definitions), ...dangling(found)];
}

interface Visit {
  readonly schema: z.ZodType;
  readonly value: unknown;
  readonly path: FilePath;
  /** The group that holds the value. */
  readonly owner: unknown;
}

function collect({ schema, value, path, owner }: Visit, found: Found): void {
  if (schema instanceof z.ZodOptional && value === undefined) return;
  const plain = unwrapped(schema);
  const role = idRole(plain);
  if (role !== undefined) note({ role, schema: plain, value, path, owner }, found);
  else if (plain instanceof z.ZodUnion) {
    const branch = likelyBranch(plain, value);
    if (branch) collect({ schema: branch, value, path, owner }, found);
  } else if (plain instanceof z.ZodObject) {
    for (const key of Object.keys(plain.shape)) {
      const inside = isGroup(value) && Object.hasOwn(value, key) ? value[key] : undefined;
      collect(
        { schema: plain.shape[key] as z.ZodType, value: inside, path: [...path, key], owner: value },
        found,
      );
    }
  } else if (Array.isArray(value)) {
    for (const [index, item] of value.entries()) {
      const inner = childSchema(plain, index, value);
      if (inner) collect({ schema: inner, value: item, path: [...path, index], owner: value }, found);
    }
  } else if (plain instanceof z.ZodArray) {
    for (const kind of kindsWithin(plain)) found.unreadable.add(kind);
  }
}

function note({ role, schema, value, path, owner }: Visit & { role: IdRole }, found: Found): void {
  // An id that cannot be one is told as that, and not again as one that leads nowhere.
  if (typeof value !== 'string' || !schema.safeParse(value).success) return;
  if (role.role === 'defines') found.definitions.push({ id: value, kind: role.kind, path });
  else found.references.push({ id: value, role, owner, path });
}

/** The kinds of thing that a schema has room for, at any depth. */
function kindsWithin(schema: z.ZodType): EntityKind[] {
  const plain = unwrapped(schema);
  const role = idRole(plain);
  if (role !== undefined) return role.role === 'defines' ? [role.kind] : [];
  if (plain instanceof z.ZodArray) return kindsWithin(plain.element as z.ZodType);
  if (plain instanceof z.ZodUnion) return plain.options.flatMap((option) => kindsWithin(option as z.ZodType));
  if (plain instanceof z.ZodObject)
    return Object.values(plain.shape).flatMap((inner) => kindsWithin(inner as z.ZodType));
  return [];
}

/** The namespace of a thing: its scheme for a connection, else the whole file. */
function namespaceOf(kind: EntityKind, path: FilePath): string {
  return kind === 'connection' ? path.slice(0, 2).join('/') : '';
}

function byNamespace(definitions: readonly Definition[]): Map<string, Map<string, Definition>> {
  const spaces = new Map<string, Map<string, Definition>>();
  for (const definition of definitions) {
    const name = namespaceOf(definition.kind, definition.path);
    const space = spaces.get(name) ?? new Map<string, Definition>();
    if (!space.has(definition.id)) space.set(definition.id, definition);
    spaces.set(name, space);
  }
  return spaces;
}

function duplicates(definitions: readonly Definition[]): Flaw[] {
  const spaces = byNamespace(definitions);
  const flaws: Flaw[] = [];
  for (const definition of definitions) {
    const { id, kind, path } = definition;
    const whole = spaces.get('')?.get(id);
    const own = spaces.get(namespaceOf(kind, path))?.get(id);
    const first = whole ?? own;
    if (first && first !== definition)
      flaws.push({ path, code: 'duplicate-id', id, kind, first: first.path, firstKind: first.kind });
  }
  return flaws;
}

function dangling({ definitions, references, unreadable }: Found): Flaw[] {
  const spaces = byNamespace(definitions);
  const idsByScope = new Map<string, string[]>();
  return references.flatMap(({ id, role, owner, path }): Flaw[] => {
    const words = role.besides(owner);
    if (words.includes(id) || role.kinds.some((kind) => unreadable.has(kind))) return [];
    const lookIn = role.kinds.map((kind) => spaces.get(namespaceOf(kind, path))?.get(id));
    if (lookIn.some((target) => target !== undefined && role.kinds.includes(target.kind))) return [];
    const target = spaces.get('')?.get(id);
    const instead = target && { kind: target.kind, path: target.path.slice(0, -1) };
    const scope = `${role.kinds.join()} ${role.kinds.map((kind) => namespaceOf(kind, path)).join()}`;
    const choices = idsByScope.get(scope) ?? choicesFor(role.kinds, path, definitions);
    idsByScope.set(scope, choices);
    // Ids often differ by one letter, so only a near miss in a long one is a likely slip.
    const meant = nearest(id, [...choices, ...words], Math.floor(id.length / 5));
    return [{ path, code: 'dangling-reference', id, kinds: role.kinds, instead, choices, words, meant }];
  });
}

function choicesFor(
  kinds: readonly EntityKind[],
  from: FilePath,
  definitions: readonly Definition[],
): string[] {
  return definitions
    .filter(({ kind, path }) => kinds.includes(kind) && namespaceOf(kind, path) === namespaceOf(kind, from))
    .map(({ id }) => id);
}
