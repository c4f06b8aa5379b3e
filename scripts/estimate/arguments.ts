import { parseArgs } from 'node:util';
import { isSheetName, type SheetName } from '#drawing/plan/sheet-layout.ts';
import { isDay, today } from '../product/days.ts';

/** What the command line asked for. */
export interface EstimateArguments {
  readonly jobPath: string;
  readonly outPath: string;
  readonly schemeId: string | null;
  readonly libraryPath: string | null;
  readonly json: boolean;
  /** Whether schemes are searched for beside those of the job. */
  readonly search: boolean;
  /** The date printed on what is written, ISO. */
  readonly date: string;
  /** The paper of the plans; null: as each plan asks. */
  readonly sheet: SheetName | null;
}

export const usage = `Usage: npm run -s estimate -- JOB.json --out DIR [--scheme ID] [--library FILE] [--search] [--json] [--date YYYY-MM-DD] [--sheet A4|A3]

Reads a job file, works out every scheme in it, checks and prices it, and writes into DIR:
  estimate.json             everything, for programs
  bill-of-materials.xlsx    the workbook, for people
  bill-of-materials.csv     the bill, a row a line, for spreadsheets
  labour.csv                the labour, a row a task
  quotation.pdf             the quotation or estimate, for the customer
  tasks.pdf                 the work in order, with its holds and boxes to tick
  connections.pdf           circuits in order, and every conductor at every place
  cuts-and-floors.pdf       what is cut from which length, joists that are cut, floors that are opened
  test-sheet.pdf            what to test once the work is done: how to connect, expected, limit, room for readings
  record.pdf                what a certificate for the work is filled in from; record.json the same as data
  dangerous-condition.pdf   the letter to the customer, where something found shuts a stop gate
  shopping.txt              the shopping list by counter, with the cut list; shopping.csv the same list for spreadsheets
  wiring-plan.svg           the plan of the first storey; wiring-plan-<storey>.svg beside it for the others; .dxf for drafting
  wiring-plan.pdf           the plans of all storeys with their lists, to print at 100 %; --sheet puts all plans on A4 or A3

With --batch in the place of a job file a whole folder or stream of jobs is estimated, a line for each: --batch --help.
With --search estimate.json also holds the schemes that cost least, and those that disturb the house least, of all that
pass the checks, searched for.
Workbook, plan and shopping list are of the scheme asked for, else of the cheapest that does not fail, else of the first.
Exit: 0 a scheme may go ahead as far as checked; 1 it may not, everything is written; 2 the file or the call is
faulty, nothing is written.`;

/** Reads the command line; a string instead says what is wrong with it. */
export function estimateArguments(argv: readonly string[]): EstimateArguments | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: {
        out: { type: 'string' },
        scheme: { type: 'string' },
        library: { type: 'string' },
        date: { type: 'string' },
        json: { type: 'boolean', default: false },
        search: { type: 'boolean', default: false },
        sheet: { type: 'string' },
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
    const { sheet } = values;
    if (sheet !== undefined && !isSheetName(sheet)) return `--sheet wants A4 or A3, not "${sheet}".`;
    return {
      jobPath,
      outPath: values.out,
      schemeId: values.scheme ?? null,
      libraryPath: values.library ?? null,
      json: values.json,
      search: values.search,
      date: values.date ?? today(),
      sheet: sheet ?? null,
    };
  } catch (error) {
    return `${error instanceof Error ? error.message : String(error)}\n\n${usage}`;
  }
}
