import { z } from 'zod';
import { type EntityKind, idRole } from './id-roles.ts';
import { id } from './primitives.ts';
import { childSchema, type FilePath, isGroup, likelyBranch, unwrapped, valueAt } from './schema-walk.ts';
import { quoted } from './value-words.ts';

/** A place in a file as people write it: `points[3].place.wall`; `file` for the whole. */
export function pathWords(path: FilePath): string {
  let words = '';
  for (const key of path) {
    if (typeof key === 'number') words += `[${key}]`;
    else if (/^[\p{L}_$][\p{L}\p{N}_$]*$/u.test(key)) words += words === '' ? key : `.${key}`;
    else words += `[${quoted(key)}]`;
  }
  return words === '' ? 'file' : words;
}

/**
 * The things on the way to a place, innermost first, by their labels where they have one, and the storey of what
 * has a place: `socket W1 (Ground floor)`; `opening o2, wall w4, storey "Ground floor"`.
 *
 * @returns undefined where the place lies in nothing that has an id.
 */
export function subjectWords(schema: z.ZodType, file: unknown, path: FilePath): string | undefined {
  const subjects: string[] = [];
  let at: z.ZodType | undefined = schema;
  let value = file;
  for (const key of path) {
    const subject = at && entityWords(at, value, file);
    if (subject !== undefined) subjects.unshift(subject);
    at = at && childSchema(at, key, value);
    value = valueAt(value, [key]);
  }
  return subjects.length === 0 ? undefined : subjects.join(', ');
}

function entityWords(schema: z.ZodType, value: unknown, file: unknown): string | undefined {
  const kind = entityKind(schema, value);
  if (kind === undefined || !isGroup(value)) return undefined;
  const name = [value.label, value.name].find((word) => typeof word === 'string' && word !== '');
  if (typeof name !== 'string') return typeof value.id === 'string' ? `${kind} ${idWords(value.id)}` : kind;
  const isSocket = kind === 'point' && typeof value.kind === 'string' && value.kind.startsWith('socket');
  const storey = storeyOf(value.place, file);
  return `${isSocket ? 'socket' : kind} ${idWords(name)}${storey === undefined ? '' : ` (${storey})`}`;
}

/** The name of the storey that a place is on, as far as the file tells it. */
function storeyOf(place: unknown, file: unknown): string | undefined {
  const storeys = isGroup(file) && Array.isArray(file.storeys) ? file.storeys.filter(isGroup) : [];
  if (!isGroup(place)) return undefined;
  const hasWall = ({ walls }: Record<string, unknown>): boolean =>
    Array.isArray(walls) && walls.some((wall) => isGroup(wall) && wall.id === place.wall);
  const storey = storeys.find((one) => (place.wall === undefined ? one.id === place.storey : hasWall(one)));
  const name = storey?.name;
  return typeof name === 'string' && name !== '' ? quoted(name).slice(1, -1) : undefined;
}

/** A word that could be an id as it stands; anything else quoted, so that what it hides is seen. */
function idWords(word: string): string {
  return id.safeParse(word).success ? word : quoted(word);
}

function entityKind(schema: z.ZodType, value: unknown): EntityKind | undefined {
  const plain = unwrapped(schema);
  // Every branch of a union of things defines an id of the same kind, so the first will do for a stray one.
  const group = plain instanceof z.ZodUnion ? (likelyBranch(plain, value) ?? plain.options[0]) : plain;
  if (!(group instanceof z.ZodObject) || group.shape.id === undefined) return undefined;
  const role = idRole(group.shape.id as z.ZodType);
  return role?.role === 'defines' ? role.kind : undefined;
}
