import { parseArgs } from 'node:util';
import { circuitsRead, inferCircuit } from '#engine/proof/readings/infer-circuit.ts';
import { readingsJson } from '#exports/readings-json.ts';
import { readJobFile } from './product/job-file.ts';
import { runCommand } from './product/run-command.ts';
import { readingsTable } from './readings/readings-table.ts';

const usage = `Usage: npm run -s readings -- JOB.json [--json]

Prints what the readings of a job say of its circuits: order, lengths, spurs, how sure that is, and what to
measure next. Nothing is written. Exits with 0, or with 2 for a faulty call or file.`;

interface ReadingsArguments {
  readonly path: string;
  readonly json: boolean;
}

/** The call as it was meant; a text where it cannot be understood. */
function readingsArguments(given: readonly string[]): ReadingsArguments | string {
  try {
    const options = {
      json: { type: 'boolean', default: false },
      help: { type: 'boolean', default: false },
    } as const;
    const { values, positionals } = parseArgs({ args: [...given], options, allowPositionals: true });
    const [path, ...more] = positionals;
    if (values.help) return usage;
    return path === undefined || more.length > 0
      ? `Name one job file.\n\n${usage}`
      : { path, json: values.json };
  } catch (error) {
    return `${error instanceof Error ? error.message : String(error)}\n\n${usage}`;
  }
}

async function run({ path, json }: ReadingsArguments): Promise<number> {
  const job = await readJobFile(path);
  const said = json
    ? readingsJson(job)
    : readingsTable(
        job,
        circuitsRead(job).map((id) => inferCircuit(job, id)),
      );
  process.stdout.write(said);
  return 0;
}

await runCommand({ args: readingsArguments(process.argv.slice(2)), usage, run });
