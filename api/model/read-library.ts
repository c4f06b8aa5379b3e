import type { Fault } from './fault.ts';
import { type Library, library } from './library.ts';
import { checkFile, parseText } from './read-file.ts';

/** A firm's library, or every fault of its file at once in the file's order. */
export type ReadLibrary =
  | { readonly ok: true; readonly library: Library }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** Reads a library (firm, prices, norms, limits, terms) from parsed JSON, as strictly as a job. */
export function readLibrary(input: unknown): ReadLibrary {
  const checked = checkFile(library, input);
  return checked.ok ? { ok: true, library: checked.value } : checked;
}

/** Reads a library from the text of its file; a text that is no JSON has one fault, by line and column. */
export function readLibraryText(text: string): ReadLibrary {
  const parsed = parseText(text);
  return parsed.ok ? readLibrary(parsed.value) : parsed;
}
