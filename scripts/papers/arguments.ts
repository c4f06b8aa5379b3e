import { parseArgs } from 'node:util';
import { isDay, today } from '../product/days.ts';
import type { AskedOfFile } from '../product/papers-of-file.ts';

/** What the command line asked for. */
export interface PapersArguments extends AskedOfFile {
  readonly outPath: string;
  /** The job as it was agreed; null: none is given. */
  readonly agreedPath: string | null;
}

export const usage = `Usage: npm run -s papers -- JOB.json --out DIR [--scheme ID] [--library FILE] [--date YYYY-MM-DD] [--agreed JOB.json]

Writes all papers of a job and of one scheme into DIR:
  papers.pdf   the pack to take along: contents, cautions, tasks, connections, cuts and floors, test sheet, the record
               for a certificate, wiring plans; a letter first where what was found is dangerous
  papers.zip   everything: the pack, each paper by itself, workbook, quotation, lists, drawings, the job file; photos are
               not in a job file, so they are not in here either

The scheme is the one asked for, else the cheapest that does not fail, else the first. Once the job file says that the work
is done, papers are as built; --agreed names the job file as it was agreed, and they tell what changed.
Exit: 0 written; 2 a file or the call is faulty, nothing is written.`;

/** Reads the command line; a string instead says what is wrong with it. */
export function papersArguments(argv: readonly string[]): PapersArguments | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: {
        out: { type: 'string' },
        scheme: { type: 'string' },
        library: { type: 'string' },
        date: { type: 'string' },
        agreed: { type: 'string' },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    if (values.help) return usage;
    const [jobPath, ...rest] = positionals;
    if (jobPath === undefined) return `Name a job file.\n\n${usage}`;
    if (rest.length > 0) return `One job file at a time: "${rest.join('", "')}" is too much.\n\n${usage}`;
    if (values.out === undefined) return `Say with --out in which folder to write.\n\n${usage}`;
    if (values.date !== undefined && !isDay(values.date))
      return `--date wants a date such as 2026-11-25, not "${values.date}".`;
    return {
      jobPath,
      outPath: values.out,
      schemeId: values.scheme ?? null,
      libraryPath: values.library ?? null,
      date: values.date ?? today(),
      agreedPath: values.agreed ?? null,
    };
  } catch (error) {
    return `${error instanceof Error ? error.message : String(error)}\n\n${usage}`;
  }
}
