import { execFile } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';

/**
 * Builds the screen once before the tests, as people get it, into a folder of its own: a product that runs beside the
 * tests keeps its screen. The servers of the journeys are told of it by the environment.
 */
export default async function buildScreen(): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'screen-'));
  const vite = join('node_modules', 'vite', 'bin', 'vite.js');
  const options = ['--config', '.vite.config.ts', '--outDir', folder, '--emptyOutDir', '--logLevel', 'error'];
  const env = { ...process.env, NODE_ENV: 'production' };
  await promisify(execFile)(process.execPath, [vite, 'build', ...options], { env });
  process.env.SCREEN_FOLDER = folder;
  return () => rm(folder, { recursive: true, force: true });
}
