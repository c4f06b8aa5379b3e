import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { drafting, findProgram } from '../../scripts/product/find-program.ts';

const run = promisify(execFile);

/** Opens a DXF in LibreCAD, fits it to a page and gives what it prints, as PDF. */
export async function printedByDrafting(dxf: string): Promise<Uint8Array> {
  const program = findProgram(drafting);
  if (program === null) throw new Error('LibreCAD is missing: npm run -s pretest says how to get it.');
  const folder = await mkdtemp(join(tmpdir(), 'drafting-'));
  try {
    await writeFile(join(folder, 'plan.dxf'), dxf);
    const env = { ...process.env, QT_QPA_PLATFORM: 'offscreen', HOME: folder, XDG_RUNTIME_DIR: folder };
    await run(program, ['dxf2pdf', '-a', '-o', 'plan.pdf', 'plan.dxf'], {
      cwd: folder,
      env,
      timeout: 120_000,
    });
    return new Uint8Array(await readFile(join(folder, 'plan.pdf')));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
