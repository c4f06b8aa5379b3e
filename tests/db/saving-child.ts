import { openDatabase } from '../../api/db/open-database.ts';
import { storesOf } from '../../api/db/stores-of.ts';
import { heading } from './test-store.ts';

// Saves one job over and over and says each acknowledged revision, until it is killed.
const [url = '', startText = '1'] = process.argv.slice(2);
const database = await openDatabase(url);
const { jobs } = await storesOf(database, 'own', () => new Date());
for (let base = Number(startText); ; ) {
  const text = JSON.stringify({ revision: base + 1, filler: 'x'.repeat(20_000) });
  const saved = await jobs.save(heading('crash'), text, base, 'by-hand');
  if (saved.outcome === 'no-such-job') throw new Error('the job is not there');
  if (saved.outcome === 'saved') process.stdout.write(`${saved.revision}\n`);
  base = saved.revision;
}
