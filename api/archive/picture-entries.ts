import { entryOfPicture } from './archive-entries.ts';
import { imageKind } from './image-kind.ts';
import { pictureId } from './picture-id.ts';
import type { ZipEntry } from './zip-of.ts';

/** Pictures by the names that archives give them, each once, in the order of their names; bytes that are no picture are left out. */
export function pictureEntries(pictures: readonly Uint8Array[]): readonly ZipEntry[] {
  const entries = new Map<string, Uint8Array>();
  for (const bytes of pictures) {
    const kind = imageKind(bytes);
    if (kind !== null) entries.set(entryOfPicture(pictureId(bytes), kind), bytes);
  }
  return [...entries]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, content]) => ({ name, content, isPacked: true }));
}
