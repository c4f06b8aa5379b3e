import { z } from '@hono/zod-openapi';
import { jobJsonSchema } from '#model/job-json-schema.ts';
import { library } from '#model/library.ts';

/** A schema of the document, by the name that references use. */
export interface NamedSchema {
  readonly name: string;
  readonly schema: object;
}

const isGroup = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A copy in which references to a schema's own definitions lead to the document's components. */
function repointed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(repointed);
  if (!isGroup(value)) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [
      key,
      key === '$ref' && typeof inner === 'string'
        ? inner.replace(/^#\/\$defs\//, '#/components/schemas/')
        : repointed(inner),
    ]),
  );
}

const schemaFrom = (value: unknown): Record<string, unknown> => {
  const schema = repointed(value);
  if (!isGroup(schema)) throw new Error('A JSON schema is a group of keys.');
  return schema;
};

/** A JSON schema with its definitions as components of the document, itself under `name`. */
function asComponents(name: string, whole: object): readonly NamedSchema[] {
  const { $defs, $schema: _dialect, ...schema } = schemaFrom(whole);
  const inner = isGroup($defs) ? Object.entries($defs) : [];
  return [
    { name, schema },
    ...inner.map(([key, definition]) => ({ name: key, schema: schemaFrom(definition) })),
  ];
}

const words = { type: 'string' };
const listOf = (description: string) => ({ type: 'array', description, items: { type: 'object' } });

/** What an estimate holds at its top; the rest is in the README's words. */
const estimateSchema = {
  type: 'object',
  description:
    'Every scheme worked out, checked, counted and priced. Lengths mm, money whole pence. Keys may be added.',
  required: ['engine', 'reference', 'title', 'date', 'revision', 'cautions', 'schemes', 'cheapestId'],
  properties: {
    engine: words,
    reference: words,
    title: words,
    date: words,
    revision: { type: 'integer' },
    edition: words,
    editionNote: words,
    cautions: { type: 'array', items: words },
    asFound: { type: 'object', description: 'The proof and the findings of the house before any work.' },
    schemes: listOf(
      'In the job’s order: complies, totals, range, survey, openQuestions, runs, joints, boxes, fusedUnits, takeoff, labour, price, purchase, proof, findings.',
    ),
    differences: listOf('Each scheme against the cheapest that does not fail.'),
    cheapestId: { type: ['string', 'null'], description: 'Null when every scheme fails or there is none.' },
  },
};

/** What the answer on readings holds at its top. */
const readingsSchema = {
  type: 'object',
  description:
    'What loop readings taken before the work say of the circuits. Lengths mm, Ω at 20 °C. Keys may be added.',
  required: ['reference', 'title', 'edition', 'circuits'],
  properties: {
    reference: words,
    title: words,
    edition: words,
    circuits: listOf(
      'Circuits that were read, in the job’s order: taken, loop, order, points, legs, contradictions, causes, next, undecidable.',
    ),
  },
};

const estimateRequestSchema = {
  description: 'A job file, or a job with what it is to be priced with.',
  anyOf: [
    { $ref: '#/components/schemas/Job' },
    {
      type: 'object',
      additionalProperties: false,
      required: ['job'],
      properties: {
        job: { $ref: '#/components/schemas/Job' },
        library: {
          $ref: '#/components/schemas/Library',
          description: 'Absent: the firm’s own.',
        },
        date: { type: 'string', format: 'date', description: 'Absent: today.' },
        revision: { type: 'integer', minimum: 0, description: 'Absent: 1.' },
      },
    },
  ],
};

/** The schemas that bodies are described by and that no route derives itself; names are unique. */
export function documentSchemas(): readonly NamedSchema[] {
  const all = [
    ...asComponents('Job', jobJsonSchema()),
    ...asComponents('Library', z.toJSONSchema(library, { target: 'draft-2020-12' })),
    { name: 'Estimate', schema: estimateSchema },
    { name: 'EstimateRequest', schema: estimateRequestSchema },
    { name: 'Readings', schema: readingsSchema },
    { name: 'FrozenText', schema: { description: 'JSON of the kind that was asked for, as it was frozen.' } },
  ];
  return [...new Map(all.map((one) => [one.name, one])).values()];
}
