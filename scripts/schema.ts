import { readFileSync, writeFileSync } from 'node:fs';
import { jobJsonSchema } from '#model/job-json-schema.ts';

// Writes data/job.schema.json from the schemas in api/model; with --check it only says whether the file is in step.
const file = new URL('../data/job.schema.json', import.meta.url);
const fresh = `${JSON.stringify(jobJsonSchema(), null, 2)}\n`;

if (process.argv.includes('--check')) {
  if (writtenText() !== fresh) {
    console.error('data/job.schema.json is not in step with api/model: run npm run schema');
    process.exitCode = 1;
  }
} else {
  writeFileSync(file, fresh);
}

function writtenText(): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return ''; // no file yet: as stale as can be
  }
}
