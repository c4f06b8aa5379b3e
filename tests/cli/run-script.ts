import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's own folder. */
export const root = fileURLToPath(new URL('../..', import.meta.url));

/** The file of a demo job. */
export const demoFile = (name: string): string => join(root, 'data/jobs', `${name}.json`);

/** How a command ended, and what it said. */
export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a script of the product's as a user would, in a process of its own. */
export const runScript = (script: string, ...args: readonly string[]): Promise<Ran> =>
  runScriptOn('', script, ...args);

/** The same, with a text on its standard input. */
export const runScriptOn = (input: string, script: string, ...args: readonly string[]): Promise<Ran> =>
  new Promise((resolve) => {
    const command = [join(root, 'node_modules/tsx/dist/cli.mjs'), join(root, 'scripts', script), ...args];
    const child = execFile(process.execPath, command, { cwd: root, maxBuffer: 1e8 }, (error, out, err) => {
      resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, err });
    });
    child.stdin?.end(input);
  });
