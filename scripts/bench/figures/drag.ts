import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { FigureGroup } from '../measuring.ts';

interface TracedCase {
  readonly name: string;
  readonly p95Ms: number;
}

/** A drag's trace, case by case; beyond the limit the script ends with 1 and has said all the same. */
async function tracedCases(): Promise<readonly TracedCase[]> {
  const script = [join('node_modules', 'tsx', 'dist', 'cli.mjs'), join('scripts', 'drag-trace.ts'), '--json'];
  const { stdout } = await promisify(execFile)(process.execPath, script).catch((error) => {
    if (error.code !== 1 || error.stdout === '') throw error;
    return error as { stdout: string };
  });
  return stdout
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));
}

/** What a movement of the pointer asks of the page: the worst of all things dragged, windows and paces. */
export const dragFigures: FigureGroup = {
  name: 'drag',
  measure: async () => ({ dragWorkMsP95: Math.max(...(await tracedCases()).map(({ p95Ms }) => p95Ms)) }),
};
