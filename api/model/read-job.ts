import type { Fault } from './fault.ts';
import { flawInWords } from './file-faults.ts';
import { JOB_FORMAT, type Job, job } from './job.ts';
import { checkFile, parseText } from './read-file.ts';
import { isGroup } from './schema-walk.ts';
import { type Upgrade, upgradeJob } from './upgrades.ts';
import { foundWords } from './value-words.ts';

/** A job, or every fault of its file at once in the file's order. */
export type ReadJob =
  | { readonly ok: true; readonly job: Job }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * Reads a job from parsed JSON. Refused are only wrong shapes and types, unknown keys and words, duplicate ids,
 * dangling references and numbers that cannot be; odd geometry and odd circuits are for the rules to find.
 *
 * @param upgrades steps from older versions; all of them unless a test brings its own.
 */
export function readJob(input: unknown, upgrades?: readonly Upgrade[]): ReadJob {
  if (isGroup(input) && input.format !== undefined && input.format !== JOB_FORMAT) {
    const found = foundWords(input.format);
    return {
      ok: false,
      faults: [flawInWords({ path: ['format'], code: 'wrong-format', format: JOB_FORMAT, found })],
    };
  }
  const upgraded = isGroup(input) ? upgradeJob(input, upgrades) : { ok: true as const, job: input };
  if (!upgraded.ok) return { ok: false, faults: [flawInWords(upgraded.flaw)] };
  const checked = checkFile(job, upgraded.job);
  return checked.ok ? { ok: true, job: checked.value } : checked;
}

/** Reads a job from the text of its file; a text that is no JSON has one fault, by line and column. */
export function readJobText(text: string): ReadJob {
  const parsed = parseText(text);
  return parsed.ok ? readJob(parsed.value) : parsed;
}
