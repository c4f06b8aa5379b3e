import { hostname } from 'node:os';
import { fileURLToPath } from 'node:url';
import { settingsFrom } from '../../api/http/settings.ts';
import { Refused } from './job-file.ts';

/** The address of the store that the server would open: DATABASE_URL, else the file beside the README. */
export function storeUrl(): string {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const { DATABASE_URL } = process.env;
  const read = settingsFrom({ DATABASE_URL }, { root, hostName: hostname(), isReadable: () => true });
  if (!read.ok) throw new Refused(read.faults.join('\n'));
  return read.settings.databaseUrl;
}

const words: Readonly<Record<string, string>> = {
  jobs: 'jobs',
  job_revisions: 'states of jobs',
  libraries: 'libraries',
  quotations: 'quotations',
  assets: 'photos',
};

/** What a store holds, in words. */
export const holdsWords = (rows: Readonly<Record<string, number>>): string =>
  Object.entries(words)
    .map(([table, called]) => `${rows[table] ?? 0} ${called}`)
    .join(', ');
