import { mkdir, writeFile } from 'node:fs/promises';
import { golden } from '#tests/golden/golden.ts';

/** Writes our own output of the demo jobs, kept to see what a change moves; never a reference. */
const { figures, picture } = golden();
await mkdir(new URL('../data/pictures/', import.meta.url), { recursive: true });
await writeFile(new URL('../tests/golden/figures.json', import.meta.url), figures);
await writeFile(new URL('../data/pictures/saltglass-row-first-floor.svg', import.meta.url), picture);
process.stdout.write('Golden figures and the picture of the README are written.\n');
