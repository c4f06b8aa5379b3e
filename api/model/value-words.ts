import { z } from 'zod';
import { idRole } from './id-roles.ts';
import { branches, isGroup, unwrapped } from './schema-walk.ts';

const MOST_LETTERS = 40;

/** A value of a file in words, shortened so that a message stays a line. */
export function foundWords(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (typeof value === 'string') return quoted(value);
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (Array.isArray(value)) return value.length === 1 ? 'a list of 1' : `a list of ${value.length}`;
  if (!isGroup(value)) return `a ${typeof value}`;
  const keys = Object.keys(value);
  const more = keys.length > 4 ? ', …' : '';
  if (keys.length === 0) return 'an empty group { }';
  return `a group { ${keys.slice(0, 4).map(shortened).join(', ')}${more} }`;
}

/** A word of the file in double quotes, as the file has it, shortened. */
export function quoted(word: string): string {
  return JSON.stringify(shortened(word));
}

function shortened(word: string): string {
  return word.length > MOST_LETTERS ? `${word.slice(0, MOST_LETTERS - 1)}…` : word;
}

/** What a schema asks for, in words. */
export function expectedWords(schema: z.ZodType): string {
  const plain = unwrapped(schema);
  const role = idRole(plain);
  if (role?.role === 'defines') return 'an id of its own';
  if (role?.role === 'refers') return `the id of ${kindWords(role.kinds)}`;
  if (plain instanceof z.ZodEnum) return listWords(plain.options.map(foundWords));
  if (plain instanceof z.ZodLiteral) return foundWords(plain.value);
  if (plain instanceof z.ZodUnion) return listWords(branches(plain).map(expectedWords));
  if (plain instanceof z.ZodObject) return `a group ${shapeWords(plain)}`;
  if (plain instanceof z.ZodTuple) return tupleWords(plain);
  if (plain instanceof z.ZodArray) return 'a list [ ]';
  if (plain instanceof z.ZodRecord) return 'a group of fields, each with its certainty';
  if (plain instanceof z.ZodISODate) return 'a date such as "2025-03-31"';
  if (plain instanceof z.ZodNumber) return plain.isInt ? 'a whole number' : 'a number';
  if (plain instanceof z.ZodBoolean) return 'true or false';
  if (plain instanceof z.ZodNull) return 'null';
  return 'text in double quotes';
}

function tupleWords(tuple: z.ZodTuple): string {
  const items = tuple.def.items.map((item) => unwrapped(item as z.ZodType));
  return items.every((item) => item instanceof z.ZodNumber)
    ? 'a position [x, y] of two numbers'
    : `a list of exactly ${items.length}`;
}

/** The keys of a group, those that may be absent with a question mark. */
export function shapeWords(group: z.ZodObject): string {
  const keys = Object.entries(group.shape).map(([key, schema]) =>
    schema instanceof z.ZodOptional ? `${key}?` : key,
  );
  return `{ ${keys.join(', ')} }`;
}

/** Alternatives in words: `a, b or c`. */
export function listWords(alternatives: readonly string[]): string {
  const last = alternatives.at(-1) ?? '';
  return alternatives.length < 2 ? last : `${alternatives.slice(0, -1).join(', ')} or ${last}`;
}

/** Kinds of thing in words: `a point or a board`, `an RCD`. */
export function kindWords(kinds: readonly string[]): string {
  return listWords(kinds.map(aKind));
}

function aKind(kind: string): string {
  return /^([aeio]|RCD)/.test(kind) ? `an ${kind}` : `a ${kind}`;
}
