import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Makes one folder for what tests write, told to them by the environment, and clears it away after the last of them. */
export default async function scratchFolder(): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'scratch-'));
  process.env.SCRATCH_FOLDER = folder;
  return () => rm(folder, { recursive: true, force: true });
}
