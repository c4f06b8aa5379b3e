import { openDatabase } from '../../api/db/open-database.ts';
import { storesOf } from '../../api/db/stores-of.ts';
import { numberedStores } from './numbered-stores.ts';
import { crashText, heading } from './test-store.ts';

// Makes one job and saves it over and over, saying each acknowledged revision, until it has made so many saves or is
// killed. Where others save the same job, it saves on what it is refused for. It opens the store no earlier than told.
const [url = '', id = '', saves = 'Infinity', opensAt = '0'] = process.argv.slice(2);
// Programs that are to open it at the same moment start up at their own pace before.
while (Date.now() < Number(opensAt));
const database = await openDatabase(url);
const { jobs } = numberedStores(await storesOf(database, 'own', () => new Date()));
const made = await jobs.create(heading(id), crashText(1));
if (made.outcome === 'created') process.stdout.write(`${made.revision}\n`);
let base = made.outcome === 'created' ? made.revision : ((await jobs.read(id))?.revision ?? 0);
for (let done = 0; done < Number(saves); ) {
  const saved = await jobs.save(heading(id), crashText(base + 1), base, 'by-hand');
  if (saved.outcome === 'no-such-job') throw new Error('the job is not there');
  if (saved.outcome === 'saved') {
    process.stdout.write(`${saved.revision}\n`);
    done += 1;
  }
  base = saved.revision;
}
await database.close();
