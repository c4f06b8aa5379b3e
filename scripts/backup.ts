import { parseArgs } from 'node:util';
import { backUp } from '../api/db/backup.ts';
import { runCommand } from './product/run-command.ts';
import { holdsWords, storeUrl } from './product/store-url.ts';

const USAGE = `Usage: npm run -s backup -- --out FILE

Makes one file of the whole store, while the server runs or not: reads it back, checks it and compares it with the store. FILE
must not be there yet; where it is a folder, the file is named by the moment. The store is the one that DATABASE_URL names.
Exit: 0 made and checked; 2 not made, and nothing is left behind.`;

function outAsked(argv: readonly string[]): { readonly out: string } | string {
  try {
    const { values } = parseArgs({
      args: [...argv],
      options: { out: { type: 'string' }, help: { type: 'boolean', short: 'h', default: false } },
    });
    if (values.help) return USAGE;
    return values.out === undefined ? `Say with --out where it is to be.\n\n${USAGE}` : { out: values.out };
  } catch (error) {
    return `${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`;
  }
}

await runCommand({
  args: outAsked(process.argv.slice(2)),
  usage: USAGE,
  run: async ({ out }) => {
    const { path, bytes, digest, compared } = await backUp(storeUrl(), out, new Date());
    const how = compared
      ? 'Read back, checked and equal to the store row by row.'
      : 'Read back and checked; the store was written to all the while, so it is as it was at one moment in between.';
    process.stdout.write(`${path}: ${(bytes / 1e6).toFixed(1)} MB, ${holdsWords(digest.rows)}.\n${how}\n`);
    return 0;
  },
});
