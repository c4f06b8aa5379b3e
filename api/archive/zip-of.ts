import JSZip from 'jszip';

/** ZIP cannot tell a time before, and equal entries are to give equal archives. */
const NO_TIME = new Date(Date.UTC(1980, 0, 1));

/** A file of an archive. */
export interface ZipEntry {
  readonly name: string;
  readonly content: string | Uint8Array;
  /** True for what is packed already, as pictures are: it is stored as it stands. */
  readonly isPacked?: boolean;
}

/**
 * Entries as one ZIP archive, in their order. Equal entries give equal bytes.
 *
 * @param comment of the archive itself, for whoever asks what made it.
 */
export async function zipOf(entries: readonly ZipEntry[], comment = ''): Promise<Uint8Array<ArrayBuffer>> {
  const archive = new JSZip();
  for (const { name, content, isPacked = false } of entries)
    archive.file(name, content, {
      date: NO_TIME,
      compression: isPacked ? 'STORE' : 'DEFLATE',
      createFolders: false,
    });
  return new Uint8Array(await archive.generateAsync({ type: 'uint8array', platform: 'DOS', comment }));
}
