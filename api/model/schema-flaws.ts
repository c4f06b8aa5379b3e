import { z } from 'zod';
import type { Bound, Flaw } from './fault.ts';
import { nearest } from './nearest.ts';
import {
  branches,
  branchWords,
  discriminatorOf,
  type FilePath,
  isGroup,
  likelyBranch,
  schemaAt,
  unwrapped,
  valueAt,
} from './schema-walk.ts';
import { expectedWords, foundWords, listWords, shapeWords } from './value-words.ts';

type Issue = z.core.$ZodIssue;

/** Everything in a file that its schema refuses, each at its path; empty if the schema takes the file. */
export function schemaFlaws(schema: z.ZodType, file: unknown): Flaw[] {
  const result = schema.safeParse(file);
  if (result.success) return [];
  return withoutEchoes(result.error.issues.flatMap((issue) => issueFlaws(schema, file, issue)));
}

/**
 * Tells each thing once: a key that is missing because it is misspelt as the misspelt one, and a number that
 * breaks two bounds by the whole of its range.
 */
function withoutEchoes(flaws: readonly Flaw[]): Flaw[] {
  const renamed = new Set<string>();
  for (const flaw of flaws)
    if (flaw.code === 'unknown-key' && flaw.meant !== undefined)
      renamed.add(JSON.stringify([...flaw.path.slice(0, -1), flaw.meant]));
  const told = new Set<string>();
  return flaws.filter((flaw) => {
    const place = JSON.stringify(flaw.path);
    const once = `${flaw.code} ${place}`;
    if (told.has(once) || (flaw.code === 'missing' && renamed.has(place))) return false;
    told.add(once);
    return true;
  });
}

function issueFlaws(root: z.ZodType, file: unknown, issue: Issue): Flaw[] {
  const path = issue.path.map((key) => (typeof key === 'number' ? key : String(key)));
  const value = valueAt(file, path);
  if (issue.code === 'unrecognized_keys') return unknownKeys(root, file, path, issue.keys);
  if (issue.code === 'invalid_union' && issue.discriminator !== undefined)
    return discriminatorFlaws(root, file, path);
  const schema = schemaAt(root, file, path);
  if (schema === undefined)
    return [{ path, code: 'not-allowed', reason: issue.message, found: foundWords(value) }];
  if (value === undefined) return [{ path, code: 'missing', expected: expectedWords(schema) }];
  if (issue.code === 'invalid_union') return unionFlaws(schema, value, path);
  return [valueFlaw(schema, value, path, issue)];
}

function unknownKeys(root: z.ZodType, file: unknown, path: FilePath, keys: readonly string[]): Flaw[] {
  const group = schemaAt(root, file, path);
  const value = valueAt(file, path);
  const branch = group instanceof z.ZodUnion ? likelyBranch(group, value) : group;
  const allowed = branch instanceof z.ZodObject ? Object.keys(branch.shape) : [];
  const free = allowed.filter((key) => !isGroup(value) || !Object.hasOwn(value, key));
  return keys.map((key) => ({
    path: [...path, key],
    code: 'unknown-key',
    allowed,
    meant: nearest(key, free),
  }));
}

/** A union whose telling key is missing or wrong: that, and what is wrong with the rest if a branch is likely. */
function discriminatorFlaws(root: z.ZodType, file: unknown, path: FilePath): Flaw[] {
  const parentPath = path.slice(0, -1);
  const union = schemaAt(root, file, parentPath);
  const parent = valueAt(file, parentPath);
  if (!(union instanceof z.ZodUnion) || !isGroup(parent)) return [];
  const discriminator = discriminatorOf(union) ?? '';
  const allowed = [...branchWords(union, discriminator).keys()];
  const value = valueAt(file, path);
  if (value === undefined) return [{ path, code: 'missing', expected: listWords(allowed.map(foundWords)) }];
  const meant = typeof value === 'string' ? nearest(value, allowed) : undefined;
  const flaw: Flaw = { path, code: 'unknown-value', allowed, found: foundWords(value), meant };
  if (meant === undefined) return [flaw];
  return [flaw, ...placed(schemaFlaws(union, { ...parent, [discriminator]: meant }), parentPath)];
}

function unionFlaws(union: z.ZodType, value: unknown, path: FilePath): Flaw[] {
  if (!(union instanceof z.ZodUnion)) return [];
  const branch = likelyBranch(union, value);
  if (branch !== undefined) return placed(schemaFlaws(branch, value), path);
  const groups = branches(union).filter((option) => option instanceof z.ZodObject);
  if (!isGroup(value) || groups.length === 0)
    return [{ path, code: 'wrong-type', expected: expectedWords(union), found: foundWords(value) }];
  return [{ path, code: 'unclear-shape', shapes: groups.map(shapeWords), found: foundWords(value) }];
}

function placed(flaws: readonly Flaw[], above: FilePath): Flaw[] {
  return flaws.map((flaw) => ({ ...flaw, path: [...above, ...flaw.path] }));
}

function valueFlaw(schema: z.ZodType, value: unknown, path: FilePath, issue: Issue): Flaw {
  const found = foundWords(value);
  switch (issue.code) {
    case 'invalid_type':
      return issue.expected === 'int' && typeof value === 'number'
        ? { path, code: 'not-whole', found }
        : { path, code: 'wrong-type', expected: expectedWords(schema), found };
    case 'invalid_value':
      return unknownValue(value, path, issue.values);
    case 'too_small':
    case 'too_big':
      return sizeFlaw(schema, value, path);
    case 'invalid_format':
      return issue.format === 'date' ? { path, code: 'bad-date', found } : { path, code: 'bad-id', found };
    case 'invalid_key':
      return { path, code: 'not-allowed', reason: 'the name of a field has 1 to 64 characters', found };
    default:
      return { path, code: 'not-allowed', reason: issue.message, found };
  }
}

function unknownValue(value: unknown, path: FilePath, values: readonly unknown[]): Flaw {
  const found = foundWords(value);
  // An enum refuses 5 and "5" in one breath; of the two only the word is a value at all.
  if (typeof value !== typeof values[0])
    return { path, code: 'wrong-type', expected: listWords(values.map(foundWords)), found };
  const meant = typeof value === 'string' ? nearest(value, values.map(String)) : undefined;
  return { path, code: 'unknown-value', allowed: values, found, meant };
}

function sizeFlaw(schema: z.ZodType, value: unknown, path: FilePath): Flaw {
  const found = foundWords(value);
  if (Array.isArray(value)) {
    const expected =
      schema instanceof z.ZodArray ? `a list of ${leastItems(schema)} or more` : expectedWords(schema);
    return { path, code: 'wrong-count', expected, count: value.length };
  }
  if (schema instanceof z.ZodString && typeof value === 'string') {
    const { minLength, maxLength } = schema;
    return {
      path,
      code: 'wrong-length',
      least: minLength ?? 0,
      most: maxLength ?? value.length,
      length: value.length,
    };
  }
  return { path, code: 'out-of-range', ...bounds(schema), found };
}

function leastItems(list: z.ZodArray): number {
  const smallest = list.def.checks?.map((check) => check._zod.def).find((def) => 'minimum' in def);
  return smallest && 'minimum' in smallest && typeof smallest.minimum === 'number' ? smallest.minimum : 0;
}

/** Both ends of a number's range, so that one message says all of it. */
function bounds(schema: z.ZodType): { least: Bound | undefined; most: Bound | undefined } {
  let least: Bound | undefined;
  let most: Bound | undefined;
  for (const check of unwrapped(schema).def.checks ?? []) {
    const def = check._zod.def as { check: string; value?: unknown; inclusive?: boolean };
    if (typeof def.value !== 'number') continue;
    const bound = { limit: def.value, inclusive: def.inclusive ?? true };
    if (def.check === 'greater_than') least = bound;
    if (def.check === 'less_than') most = bound;
  }
  return { least, most };
}
