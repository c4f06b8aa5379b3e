import { z } from '@hono/zod-openapi';
import { id } from '#model/primitives.ts';
import { type ProblemCode, problems } from './problems.ts';

const problemAnswer = z
  .object({
    type: z.string().meta({ example: '/api/problems#stale-revision' }),
    title: z.string(),
    status: z.int(),
    detail: z.string().meta({ description: 'What went wrong this time, and what to do about it.' }),
    code: z.string().meta({ description: 'The stable word for programs.', example: 'stale-revision' }),
    requestId: z.string().meta({ description: 'Names the request in the server’s log.' }),
    faults: z
      .array(z.object({ path: z.string(), message: z.string(), remedy: z.string() }))
      .optional()
      .meta({ description: 'What cannot be read, in the order of the file: the first hundred at most.' }),
    moreFaults: z.int().optional().meta({ description: 'How many faults are not listed.' }),
    currentRevision: z.int().optional(),
    currentEtag: z.string().optional(),
    savedAt: z.string().optional(),
    limitBytes: z.int().optional(),
    retryAfterS: z.int().optional(),
    choices: z.array(z.string()).optional(),
  })
  .openapi('Problem');

interface ProblemAnswer {
  readonly description: string;
  readonly content: { readonly 'application/problem+json': { readonly schema: typeof problemAnswer } };
}

type StatusOf<Code extends ProblemCode> = (typeof problems)[Code]['status'];

/** The answers of a route that are problems, by status, for its description. */
export function problemAnswers<Code extends ProblemCode>(
  ...codes: readonly Code[]
): Record<StatusOf<Code>, ProblemAnswer> {
  const answers: Partial<Record<number, ProblemAnswer>> = {};
  for (const code of codes) {
    const { status, title } = problems[code];
    const before = answers[status];
    answers[status] = {
      description: `${before === undefined ? '' : `${before.description}; `}${code}: ${title}`,
      content: { 'application/problem+json': { schema: problemAnswer } },
    };
  }
  // A builder: every code's status has just been given its answer.
  return answers as Record<StatusOf<Code>, ProblemAnswer>;
}

/** An answer of JSON that a schema describes. */
export function jsonAnswer<Schema extends z.ZodType>(description: string, schema: Schema) {
  return { description, content: { 'application/json': { schema } } };
}

/** Content that goes out as text and is described by a component of the document, by media type. */
type TextContent = Readonly<Record<string, { readonly schema: { readonly $ref: string } }>>;

/** An answer of JSON text that goes out as it is. */
export function textAnswer(description: string, component: string) {
  const content: TextContent = {
    'application/json': { schema: { $ref: `#/components/schemas/${component}` } },
  };
  return { description, content };
}

const ETAG_EXAMPLE = '"3-5f1c0a9be2d47c33"';

/** The header of an answer that names the version it is about. */
export const versionHeader = {
  ETag: {
    schema: { type: 'string' as const, example: ETAG_EXAMPLE },
    description: 'The revision and a word that differs between two texts of one number; for If-Match, whole.',
  },
};

/** As `textAnswer`, of a text that is stored with a revision. */
export function storedAnswer(description: string, component: string) {
  return { ...textAnswer(description, component), headers: versionHeader };
}

/** A JSON body that a component of the document describes; the route reads its text itself. */
export function textBody(component: string) {
  return {
    required: true,
    content: { 'application/json': { schema: { $ref: `#/components/schemas/${component}` } } },
  };
}

/** The answer to a client that holds the newest revision already. */
export const notModified = { description: 'The revision in If-None-Match is still the newest.' };

/** A job's id in an address. */
export const jobAddress = z.object({ id });

/** A job's id and one of its revisions in an address. */
export const revisionAddress = z.object({
  id,
  revision: z
    .string()
    .regex(/^[1-9]\d{0,14}$/, 'must be a whole number from 1')
    .meta({ example: '3' }),
});

/** The header that names the revision to be replaced, for the document; `ifMatchOf` reads it. */
export const ifMatchHeader = z.object({
  'if-match': z.string().optional().meta({
    description:
      'Required: the ETag of the revision to be replaced, whole; the number alone is answered 412.',
    example: ETAG_EXAMPLE,
  }),
});

/** The header that names the revision held, for the document; `isHeld` reads it. */
export const ifNoneMatchHeader = z.object({
  'if-none-match': z.string().optional().meta({ example: ETAG_EXAMPLE }),
});

/** What a save answers. */
const savedBody = z
  .object({ revision: z.int(), savedAt: z.string().meta({ description: 'ISO 8601, UTC.' }) })
  .openapi('Saved');

/** The answer of a save, with the version that came of it. */
export function savedAnswer(description: string) {
  return { ...jsonAnswer(description, savedBody), headers: versionHeader };
}
