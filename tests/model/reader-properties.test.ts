import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jobJsonSchema } from '#model/job-json-schema.ts';
import { jsonSlip } from '#model/json-slip.ts';
import { readJob, readJobText } from '#model/read-job.ts';
import { cut, placesOf, put } from './change.ts';
import { smallJob } from './small-job.ts';

const places = placesOf(smallJob());

/** Values from tame to hostile: what a hand or a wild program may leave in a file. */
const anyValue = fc.oneof(
  fc.jsonValue(),
  fc.constantFrom(
    'p-one',
    'w-east',
    'c-ring',
    'nowhere',
    'unit',
    'origin',
    '',
    ' ',
    '__proto__',
    'spur',
    'joint',
  ),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.constantFrom(
    {},
    [],
    null,
    true,
    { point: 'p-one' },
    { storey: 's-ground' },
    { kind: 'spur' },
    { how: 'joint' },
  ),
);

const mutation = fc.record({
  place: fc.constantFrom(...places),
  how: fc.constantFrom('put', 'cut', 'add', 'append'),
  key: fc.constantFrom('wal', 'extra', 'id', 'constructor', 'toString', 'point', 'kind', '0', 'a b', ''),
  value: anyValue,
});
type Mutation = typeof mutation extends fc.Arbitrary<infer Value> ? Value : never;

function mutate(file: unknown, { place, how, key, value: drawn }: Mutation): void {
  // A copy: a later mutation may reach into the value, which the generator hands out again.
  const value = structuredClone(drawn);
  try {
    const inside = place.reduce<unknown>((at, step) => (at as Record<string | number, unknown>)[step], file);
    if (how === 'cut') cut(file, place);
    else if (how === 'append' && Array.isArray(inside)) inside.push(value);
    else if (how === 'add' && typeof inside === 'object' && inside !== null)
      put(file, [...place, key], value);
    else put(file, place, value);
  } catch {
    // An earlier mutation took away where this one was to go: then it changes nothing.
  }
}

const mutatedText = fc.array(mutation, { minLength: 1, maxLength: 5 }).map((mutations) => {
  const file = smallJob();
  for (const each of mutations) mutate(file, each);
  return JSON.stringify(file);
});

const ajv = new Ajv2020({ strict: false, formats: { date: true } });
const acceptedBySchemaFile = ajv.compile(jobJsonSchema());

describe('any changed job', () => {
  it('is read whole, or refused with faults that each have a path, words and a remedy', () => {
    fc.assert(
      fc.property(mutatedText, (text) => {
        const result = readJobText(text);
        const faults = result.ok ? [] : result.faults;
        // A job without a fault is the file itself; a refused one has at least one.
        if (result.ok) expect(result.job).toEqual(JSON.parse(text));
        else expect(faults).not.toEqual([]);
        for (const { path, message, remedy } of faults) {
          expect(path).not.toBe('');
          expect(message).not.toMatch(/^$|undefined|\[object|Invalid input|\n/);
          expect(remedy).not.toMatch(/^$|undefined|\[object|\n/);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('is refused for its shape exactly when a JSON Schema validator that is not ours refuses it', () => {
    fc.assert(
      fc.property(mutatedText, (text) => {
        const result = readJobText(text);
        const beyondSchema = ['duplicate-id', 'dangling-reference'];
        const shapeIsSound = result.ok || result.faults.every(({ code }) => beyondSchema.includes(code));
        expect(shapeIsSound).toBe(acceptedBySchemaFile(JSON.parse(text)));
      }),
      { numRuns: 400 },
    );
  });

  it('has each fault once', () => {
    fc.assert(
      fc.property(mutatedText, (text) => {
        const result = readJobText(text);
        const told = result.ok ? [] : result.faults.map(({ path, code }) => `${path} ${code}`);
        expect(new Set(told).size).toBe(told.length);
      }),
      { numRuns: 200 },
    );
  });
});

it('anything at all is read or refused, never thrown at', () => {
  fc.assert(
    fc.property(
      fc.anything({ withBigInt: true, withDate: true, withMap: true, withNullPrototype: true }),
      (input) => {
        expect(readJob(input).ok).toBe(false);
        expect(readJob({ ...smallJob(), points: [input] }).ok).toBe(false);
      },
    ),
    { numRuns: 300 },
  );
});

it('every key that is taken out of a sound job is either optional or named by the faults', () => {
  for (const place of places) {
    const result = readJob(cut(smallJob(), place));
    if (result.ok) continue;
    const key = place.at(-1);
    const named = result.faults.some(
      ({ path, code }) =>
        code === 'dangling-reference' ||
        path.endsWith(String(key)) ||
        code === 'wrong-count' ||
        code === 'unclear-shape',
    );
    expect(named, place.join('.')).toBe(true);
  }
});

describe('the slip in a text', () => {
  const brokenText = fc
    .tuple(
      fc.json(),
      fc.nat(),
      fc.nat(3),
      fc.constantFrom('', ',', '"', '}', ']', '\n', '\\', 'x', '0', ':', '\u0000'),
    )
    .map(([text, at, take, add]) => {
      const from = at % (text.length + 1);
      return text.slice(0, from) + add + text.slice(from + take);
    });

  it('is found exactly where JSON.parse refuses the text', () => {
    fc.assert(
      fc.property(brokenText, (text) => {
        let parsed = true;
        try {
          JSON.parse(text);
        } catch {
          parsed = false;
        }
        expect(jsonSlip(text) === undefined).toBe(parsed);
      }),
      { numRuns: 2000 },
    );
  });
});
