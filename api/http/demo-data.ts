import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Library } from '#model/library.ts';
import { readLibrary } from '#model/read-library.ts';

/** The demo jobs' texts and the demo library. */
export interface DemoData {
  readonly demoJobs: readonly string[];
  readonly demoLibrary: Library;
}

const jsonAt = async (path: string): Promise<unknown> => JSON.parse(await readFile(path, 'utf8'));

async function demoLibraryIn(folder: string): Promise<Library> {
  const [firm, prices, norms] = await Promise.all(
    ['demo-firm.json', 'demo-prices.json', 'demo-norms.json'].map((name) => jsonAt(join(folder, name))),
  );
  const read = readLibrary({ ...Object(firm), prices, norms });
  if (read.ok) return read.library;
  throw new Error(
    `The demo library in ${folder} cannot be read: ${read.faults.map(({ path, message }) => `${path}: ${message}`).join('; ')}`,
  );
}

/**
 * Reads what the project ships as demo data, jobs in the order of their file names.
 *
 * @param folder the project's data folder.
 */
export async function readDemoData(folder: string): Promise<DemoData> {
  const names = (await readdir(join(folder, 'jobs'))).filter((name) => name.endsWith('.json')).sort();
  const demoJobs = await Promise.all(names.map((name) => readFile(join(folder, 'jobs', name), 'utf8')));
  return { demoJobs, demoLibrary: await demoLibraryIn(join(folder, 'catalogue')) };
}
