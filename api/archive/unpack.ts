import JSZip from 'jszip';
import { archiveBounds } from './archive-entries.ts';
import { UnreadableArchive } from './archive-fault.ts';

/** The end record of a ZIP and its length without a comment; a header of one of its central records. Source: PKWARE APPNOTE 4.3.12, 4.3.16. */
const END = 0x06054b50;
const END_BYTES = 22;
const CENTRAL = 0x02014b50;
const MOST_COMMENT_BYTES = 0xffff;

const FETCH_ANEW = 'Fetch it anew from where it was made, and open it as it is';

const damaged = (): UnreadableArchive =>
  new UnreadableArchive('file', 'it is no ZIP archive, or a damaged one', FETCH_ANEW);

const mb = (bytes: number): string => `${bytes / 1024 / 1024} MB`;

/** How many entries an archive says that it has. */
function entryCount(bytes: Uint8Array): number {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const first = Math.max(0, bytes.length - END_BYTES - MOST_COMMENT_BYTES);
  for (let at = bytes.length - END_BYTES; at >= first; at--)
    if (view.getUint32(at, true) === END) return view.getUint16(at + 10, true);
  throw damaged();
}

/** Whether there are more headers of entries than are read, whatever the archive says of itself. */
function hasTooMany(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let count = 0;
  for (let at = bytes.indexOf(0x50); at >= 0 && at + 4 <= bytes.length; at = bytes.indexOf(0x50, at + 1)) {
    if (view.getUint32(at, true) === CENTRAL) count++;
    if (count > archiveBounds.entries) return true;
  }
  return false;
}

/** An entry of an archive that can be unpacked piece by piece, as JSZip's can. */
interface Unpackable {
  readonly internalStream: (type: 'uint8array') => JSZip.JSZipStreamHelper<Uint8Array>;
}

const isUnpackable = (entry: object): entry is Unpackable => 'internalStream' in entry;

/** An entry by the name that it was packed under, whatever a reader makes of that. */
export interface Entry {
  readonly name: string;
  readonly isFolder: boolean;
  /** Unpacks it; throws as soon as more comes out than the limit, whatever the archive says of its size. */
  readonly unpack: (limitBytes: number) => Promise<Uint8Array<ArrayBuffer>>;
}

function unpacked(name: string, entry: object, limitBytes: number): Promise<Uint8Array<ArrayBuffer>> {
  return new Promise((resolve, reject) => {
    if (!isUnpackable(entry)) throw new Error(`The entry "${name}" cannot be unpacked piece by piece.`);
    const chunks: Uint8Array[] = [];
    let length = 0;
    const stream = entry.internalStream('uint8array');
    stream.on('data', (chunk) => {
      length += chunk.length;
      if (length <= limitBytes) {
        chunks.push(chunk);
        return;
      }
      stream.pause();
      const message = `unpacked it is larger than ${mb(limitBytes)}`;
      reject(
        new UnreadableArchive(name, message, 'Nothing that is made here is: find out where it comes from'),
      );
    });
    stream.on('error', () => reject(new UnreadableArchive(name, 'it is damaged', FETCH_ANEW)));
    stream.on('end', () => resolve(joined(chunks, length)));
    stream.resume();
  });
}

function joined(chunks: readonly Uint8Array[], length: number): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

/** The entries of a ZIP archive in the order of their names, none of them unpacked. Throws `UnreadableArchive`. */
export async function entriesOf(bytes: Uint8Array): Promise<readonly Entry[]> {
  if (bytes.length > archiveBounds.bytes)
    throw new UnreadableArchive('file', `it is larger than ${mb(archiveBounds.bytes)}`, FETCH_ANEW);
  const count = entryCount(bytes);
  if (count > archiveBounds.entries || hasTooMany(bytes))
    throw new UnreadableArchive('file', `more than ${archiveBounds.entries} files are in it`, FETCH_ANEW);
  const archive = await JSZip.loadAsync(bytes).catch(() => {
    throw damaged();
  });
  const entries = Object.values(archive.files);
  // Entries of one name count once.
  if (entries.length !== count)
    throw new UnreadableArchive('file', 'two files of one name are in it, or it is damaged', FETCH_ANEW);
  return entries
    .map((entry) => {
      const name = entry.unsafeOriginalName ?? entry.name;
      return { name, isFolder: entry.dir, unpack: (limit: number) => unpacked(name, entry, limit) };
    })
    .toSorted((a, b) => (a.name < b.name ? -1 : 1));
}
