import type { z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { checkFile } from '#model/read-file.ts';
import { bodyText, parsedBody } from './body-text.ts';
import { faultDetails, Problem } from './problems.ts';

/** A small body by its schema; one that does not fit is a problem with every fault. */
export async function smallBodyOf<Schema extends z.ZodType>(
  c: Context,
  schema: Schema,
): Promise<z.infer<Schema>> {
  const body = checkFile(schema, parsedBody(await bodyText(c)));
  if (body.ok) return body.value;
  const [first] = body.faults;
  const words = first === undefined ? 'It is not what belongs there.' : `${first.path}: ${first.message}.`;
  throw new Problem('body-unreadable', words, faultDetails(body.faults));
}
