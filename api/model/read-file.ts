import type { z } from 'zod';
import type { Fault } from './fault.ts';
import { fileFaults } from './file-faults.ts';
import { jsonSlip } from './json-slip.ts';
import { quoted } from './value-words.ts';

/** A value read from a text, or the one place at which the text is no JSON. */
export type ParsedText =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** Reads a text as JSON; a byte-order mark before it is no fault. */
export function parseText(text: string): ParsedText {
  const source = text.replace(/^\uFEFF/, '');
  try {
    return { ok: true, value: JSON.parse(source) };
  } catch (error) {
    return { ok: false, faults: [slipFault(source, String(error))] };
  }
}

function slipFault(source: string, complaint: string): Fault {
  const slip = jsonSlip(source);
  if (slip === undefined)
    return {
      path: 'file',
      code: 'not-json',
      message: `cannot be read as JSON: ${complaint}`,
      remedy: 'Write it as JSON',
    };
  const found = slip.found === undefined ? 'the text ends here' : `found ${quoted(slip.found)}`;
  return {
    path: `line ${slip.line}, column ${slip.column}`,
    code: 'not-json',
    message: `${found}, where ${slip.expected} belongs`,
    remedy:
      'Mend it there: JSON has no comma before "}" or "]", no notes, and double quotes round keys and texts',
  };
}

/** Checks a value against its schema; the value is kept whole or refused with every fault at once. */
export function checkFile<Schema extends z.ZodType>(
  schema: Schema,
  value: unknown,
): { ok: true; value: z.infer<Schema> } | { ok: false; faults: Fault[] } {
  const faults = fileFaults(schema, value);
  if (faults.length > 0) return { ok: false, faults };
  return { ok: true, value: schema.parse(value) };
}
