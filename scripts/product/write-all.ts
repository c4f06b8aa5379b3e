import { mkdir, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { LETTER, type OutFile } from '#exports/pack/all-files.ts';

/** A plan or a letter of an earlier run, which would stand beside an estimate that it does not belong to. */
const isStale = (name: string): boolean =>
  name === LETTER || /^wiring-plan(-[a-z0-9-]+)?\.(svg|pdf|dxf)$/.test(name);

async function refuseFolders(paths: readonly string[]): Promise<void> {
  for (const path of paths) {
    const there = await stat(path).catch(() => null);
    if (there?.isDirectory()) throw new Error(`${path} is a folder; move it or write elsewhere`);
  }
}

/**
 * Writes all files or none of them: each is first written beside its place and then moved into it, so that
 * a full disk leaves the files of an earlier run as they were. Plans and a letter of an earlier run that this one does not
 * write are removed. Returns the paths.
 */
export async function writeAll(folder: string, files: readonly OutFile[]): Promise<readonly string[]> {
  await mkdir(folder, { recursive: true });
  const waiting = files.map((file) => ({
    ...file,
    part: join(folder, `.${file.name}.part`),
    path: join(folder, file.name),
  }));
  await refuseFolders(waiting.map(({ path }) => path));
  try {
    for (const file of waiting) await writeFile(file.part, file.content);
    for (const file of waiting) await rename(file.part, file.path);
  } finally {
    await Promise.all(waiting.map((file) => rm(file.part, { force: true })));
  }
  const names = new Set(files.map(({ name }) => name));
  const stale = (await readdir(folder)).filter((name) => isStale(name) && !names.has(name));
  await Promise.all(stale.map((name) => rm(join(folder, name), { force: true })));
  return waiting.map((file) => file.path);
}
