import JSZip from 'jszip';
import { sheetBounds } from './sheet-bounds.ts';
import { UnreadableSheet } from './sheet-fault.ts';

const tooLarge = (): UnreadableSheet =>
  new UnreadableSheet({
    path: 'file',
    message: `unpacked it is larger than ${sheetBounds.inflatedBytes / 1024 / 1024} MB`,
    remedy: 'Save the sheet with the prices as a file of its own, without pictures, and choose that file',
  });

/** Unpacks one part of an archive without keeping it, and gives its bytes; stops at the limit. */
function unpackedBytes(part: JSZip.JSZipObject, limit: number): Promise<number> {
  return new Promise((resolve, reject) => {
    let bytes = 0;
    // The sizes that an archive tells of itself may be wrong: what comes out is counted.
    const stream = part.nodeStream('nodebuffer') as NodeJS.ReadableStream & { destroy(): void };
    stream.on('data', (chunk: Uint8Array) => {
      bytes += chunk.length;
      if (bytes <= limit) return;
      stream.pause();
      stream.destroy();
      reject(tooLarge());
    });
    stream.on('end', () => resolve(bytes));
    stream.on('error', reject);
  });
}

/** Refuses an archive that unpacks to more than is read, before anything keeps what comes out of it. */
export async function holdInflated(bytes: Uint8Array): Promise<void> {
  const archive = await JSZip.loadAsync(bytes);
  let left: number = sheetBounds.inflatedBytes;
  for (const part of Object.values(archive.files)) {
    if (part.dir) continue;
    left -= await unpackedBytes(part, left);
  }
}
