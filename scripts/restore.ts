import { parseArgs } from 'node:util';
import { restoreFrom } from '../api/db/restore.ts';
import { runCommand } from './product/run-command.ts';
import { holdsWords, storeUrl } from './product/store-url.ts';

const USAGE = `Usage: npm run -s restore -- FILE

Puts a backup in the place of the store that DATABASE_URL names. Stop the server first. The backup is checked, on a copy, before
anything is touched; what was there is kept beside it.
Exit: 0 done; 2 not done, and the store is as it was.`;

function fileAsked(argv: readonly string[]): { readonly file: string } | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: { help: { type: 'boolean', short: 'h', default: false } },
    });
    if (values.help) return USAGE;
    const [file, ...rest] = positionals;
    return file === undefined || rest.length > 0 ? `Name one backup.\n\n${USAGE}` : { file };
  } catch (error) {
    return `${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`;
  }
}

await runCommand({
  args: fileAsked(process.argv.slice(2)),
  usage: USAGE,
  run: async ({ file }) => {
    const { keptAside, digest, madeAt } = await restoreFrom(storeUrl(), file, new Date());
    const checked =
      madeAt === null
        ? 'It had no seal, as a plain copy has none: sound by itself.'
        : `Made at ${madeAt}, and what it was then.`;
    const aside =
      keptAside === null ? 'There was no store before.' : `What was there is kept in ${keptAside}.`;
    process.stdout.write(`Put back: ${holdsWords(digest.rows)}. ${checked}\n${aside}\n`);
    return 0;
  },
});
