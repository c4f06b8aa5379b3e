import { type Client, createClient, type InValue } from '@libsql/client';
import { fingerprint, type Ledger } from './ledger.ts';

/** What no sound store holds, by what it would mean; each query lists the offenders. */
const halves: readonly (readonly [string, string])[] = [
  [
    'a job without the text of its newest revision',
    `
    select job_id from jobs where not exists (select 1 from job_revisions r
      where r.firm_id = jobs.firm_id and r.job_id = jobs.job_id and r.revision = jobs.revision and r.tag = jobs.tag)`,
  ],
  [
    'a text of a revision after the newest',
    `
    select r.job_id from job_revisions r join jobs j on j.firm_id = r.firm_id and j.job_id = r.job_id
      where r.revision > j.revision`,
  ],
  [
    'a text that is not as long as it says',
    `
    select job_id from job_revisions where bytes <> length(cast(text as blob))`,
  ],
  [
    'a quotation without its first line',
    `
    select quotation_id from quotations q where not exists (select 1 from quotation_events e
      where e.firm_id = q.firm_id and e.job_id = q.job_id and e.quotation_id = q.quotation_id and e.seq = 1)`,
  ],
  [
    'a quotation whose job was not kept',
    `
    select quotation_id from quotations q where not exists (select 1 from job_revisions r
      where r.firm_id = q.firm_id and r.job_id = q.job_id and r.revision = q.job_revision and r.kept_for = 'quoted')`,
  ],
  [
    'a quotation that a newer one did not take the place of',
    `
    select q.quotation_id from quotations q join quotations n
      on n.firm_id = q.firm_id and n.job_id = q.job_id and n.revision = q.revision + 1
      where not exists (select 1 from quotation_events e where e.quotation_id = q.quotation_id and e.firm_id = q.firm_id
        and e.job_id = q.job_id and e.seq = 2 and json_extract(e.note, '$.byId') = n.quotation_id)`,
  ],
  ['a photo that is not as long as it says', 'select asset_id from assets where bytes <> length(content)'],
];

async function firstColumn(client: Client, sql: string, args: InValue[] = []): Promise<readonly unknown[]> {
  const { rows } = await client.execute({ sql, args });
  return rows.map((row) => row[0]);
}

/**
 * Looks at a store's file itself, as nobody does over the net: is it sound, is nothing half there, and does it hold every
 * library that was acknowledged?
 *
 * @returns what is wrong, in words.
 */
export async function fileFaults(url: string, library: Ledger): Promise<readonly string[]> {
  const client = createClient({ url, timeout: 5000 });
  try {
    const faults: string[] = [];
    for (const said of await firstColumn(client, 'pragma integrity_check'))
      if (said !== 'ok') faults.push(`integrity_check: ${said}`);
    for (const table of await firstColumn(client, 'pragma foreign_key_check'))
      faults.push(`foreign_key_check: ${table}`);
    for (const [words, sql] of halves)
      for (const id of await firstColumn(client, sql)) faults.push(`${words}: ${id}`);
    for (const [revision, print] of library.told) {
      const [text] = await firstColumn(client, 'select text from libraries where revision = ?', [revision]);
      if (text === undefined || fingerprint(String(text)) !== print)
        faults.push(`library: revision ${revision} is gone or another text`);
    }
    return faults;
  } finally {
    client.close();
  }
}
