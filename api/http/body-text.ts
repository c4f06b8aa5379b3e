import type { Context } from 'hono';
import { parseText } from '#model/read-file.ts';
import { jsonExcess } from './json-bounds.ts';
import { faultDetails, Problem } from './problems.ts';

/** The body's text to the byte, a byte-order mark included; what is not UTF-8 is a problem. */
export async function bodyText(c: Context): Promise<string> {
  const bytes = await c.req.arrayBuffer();
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Problem('not-utf-8', 'Save the file as UTF-8 and send it again.');
  }
}

/** A text as JSON within bounds; else a problem, with line and column for what is no JSON. */
export function parsedBody(text: string): unknown {
  const parsed = parseText(text);
  if (!parsed.ok) {
    const [slip] = parsed.faults;
    const detail = slip === undefined ? 'It is not JSON.' : `At ${slip.path}: ${slip.message}.`;
    throw new Problem('not-json', detail, faultDetails(parsed.faults));
  }
  const excess = jsonExcess(parsed.value);
  if (excess !== null) throw new Problem('beyond-bounds', `It holds ${excess}.`);
  return parsed.value;
}
