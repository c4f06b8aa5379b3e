import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/** A file to be written, by its name in the folder. */
export interface OutFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/**
 * Writes all files or none of them: each is first written beside its place and then moved into it, so that
 * a full disk leaves the files of an earlier run as they were. Returns the paths.
 */
export async function writeAll(folder: string, files: readonly OutFile[]): Promise<readonly string[]> {
  await mkdir(folder, { recursive: true });
  const waiting = files.map((file) => ({
    ...file,
    part: join(folder, `.${file.name}.part`),
    path: join(folder, file.name),
  }));
  try {
    for (const file of waiting) await writeFile(file.part, file.content);
  } catch (error) {
    await Promise.all(waiting.map((file) => rm(file.part, { force: true })));
    throw error;
  }
  for (const file of waiting) await rename(file.part, file.path);
  return waiting.map((file) => file.path);
}
