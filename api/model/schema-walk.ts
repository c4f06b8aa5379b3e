import { z } from 'zod';
import { nearest } from './nearest.ts';

/** A place in a file: keys and list positions from the top. */
export type FilePath = readonly (string | number)[];

type Group = Readonly<Record<string, unknown>>;

/** Whether a value is a group of keys, as opposed to a list, a word, a number or nothing. */
export function isGroup(value: unknown): value is Group {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The value at a place; undefined where the file has nothing. */
export function valueAt(file: unknown, path: FilePath): unknown {
  let value = file;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Group)[key];
  }
  return value;
}

/** A schema without the wrapping that lets it be absent. */
export function unwrapped(schema: z.ZodType): z.ZodType {
  return schema instanceof z.ZodOptional ? unwrapped(schema.unwrap() as z.ZodType) : schema;
}

/** The branches of a union, unwrapped. */
export function branches(union: z.ZodUnion): z.ZodType[] {
  return union.options.map((option) => unwrapped(option as z.ZodType));
}

/** The key whose value tells the branches of a union apart; undefined where their keys do. */
export function discriminatorOf(union: z.ZodUnion): string | undefined {
  return union instanceof z.ZodDiscriminatedUnion ? union.def.discriminator : undefined;
}

/** The words that a discriminated union's key may have, each with its branch. */
export function branchWords(union: z.ZodUnion, discriminator: string): Map<string, z.ZodObject> {
  const words = new Map<string, z.ZodObject>();
  for (const branch of branches(union)) {
    if (!(branch instanceof z.ZodObject)) continue;
    const literal = branch.shape[discriminator];
    if (literal instanceof z.ZodLiteral) words.set(String(literal.value), branch);
  }
  return words;
}

/**
 * The branch of a union that a value was most likely meant for, by its discriminating word or by its keys,
 * misspelt ones included.
 *
 * @returns undefined if nothing in the value speaks for one branch rather than another.
 */
export function likelyBranch(union: z.ZodUnion, value: unknown): z.ZodType | undefined {
  const discriminator = discriminatorOf(union);
  if (discriminator !== undefined) {
    const words = branchWords(union, discriminator);
    const word = valueAt(value, [discriminator]);
    return typeof word === 'string' ? words.get(nearest(word, [...words.keys()]) ?? '') : undefined;
  }
  if (!isGroup(value)) return branches(union).find((branch) => isMadeFor(branch, value));
  return likelyByKeys(
    branches(union).filter((branch) => branch instanceof z.ZodObject),
    value,
  );
}

function isMadeFor(branch: z.ZodType, value: unknown): boolean {
  if (typeof value === 'string') return branch instanceof z.ZodString;
  if (typeof value === 'number') return branch instanceof z.ZodNumber;
  if (typeof value === 'boolean') return branch instanceof z.ZodBoolean;
  return false;
}

function likelyByKeys(groups: readonly z.ZodObject[], value: Group): z.ZodObject | undefined {
  if (groups.length < 2) return groups[0];
  const keys = Object.keys(value);
  let best: z.ZodObject | undefined;
  let bestScore = 0;
  for (const group of groups) {
    // Keys that every branch has say nothing about which one was meant.
    const telling = Object.keys(group.shape).filter((key) => !groups.every((other) => key in other.shape));
    const exact = keys.filter((key) => telling.includes(key)).length;
    const near = keys.filter((key) => !telling.includes(key) && nearest(key, telling) !== undefined).length;
    const score = exact + near / 2;
    if (score > bestScore) [best, bestScore] = [group, score];
  }
  return best;
}

/** The schema of what a list or a group holds under a key; undefined if it can hold nothing there. */
export function childSchema(schema: z.ZodType, key: string | number, value: unknown): z.ZodType | undefined {
  const plain = unwrapped(schema);
  if (plain instanceof z.ZodUnion) {
    const branch = likelyBranch(plain, value);
    return branch && childSchema(branch, key, value);
  }
  if (plain instanceof z.ZodObject)
    return Object.hasOwn(plain.shape, key) ? (plain.shape[key] as z.ZodType) : undefined;
  if (plain instanceof z.ZodArray) return plain.element as z.ZodType;
  if (plain instanceof z.ZodTuple) return plain.def.items[Number(key)] as z.ZodType | undefined;
  if (plain instanceof z.ZodRecord) return plain.valueType as z.ZodType;
  return undefined;
}

/** The schema of a place in a file, unwrapped; undefined for a place that the format does not have. */
export function schemaAt(schema: z.ZodType, file: unknown, path: FilePath): z.ZodType | undefined {
  let at: z.ZodType | undefined = schema;
  let value = file;
  for (const key of path) {
    at = at && childSchema(at, key, value);
    value = valueAt(value, [key]);
  }
  return at && unwrapped(at);
}
