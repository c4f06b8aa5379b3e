import { StoreTrouble } from '../../api/db/store-trouble.ts';
import { Refused } from './job-file.ts';

/** A command of the product's, as it was called. */
export interface Command<Args> {
  /** The call as it was meant; a text where it cannot be understood, or where only the usage was asked for. */
  readonly args: Args | string;
  readonly usage: string;
  /** Does it, and gives the exit code. */
  readonly run: (args: Args) => Promise<number>;
}

async function codeOf<Args>({ args, usage, run }: Command<Args>): Promise<number> {
  if (typeof args !== 'string') return run(args);
  const isUsage = args === usage;
  (isUsage ? process.stdout : process.stderr).write(`${args}\n`);
  return isUsage ? 0 : 2;
}

const wordsOf = (error: unknown): string =>
  error instanceof Refused || error instanceof StoreTrouble
    ? error.message
    : `Could not finish: ${error instanceof Error ? error.message : String(error)}. Nothing was changed.`;

/** Runs a command and sets the exit code: its own, or 2 for a faulty call or file and for what it could not finish. */
export async function runCommand<Args>(command: Command<Args>): Promise<void> {
  try {
    process.exitCode = await codeOf(command);
  } catch (error) {
    process.stderr.write(`${wordsOf(error)}\n`);
    process.exitCode = 2;
  }
}
