/** What a photo may be; a picture that can carry scripts is none of them. */
export type ImageType = 'image/jpeg' | 'image/png' | 'image/webp';

const startsWith = (bytes: Uint8Array, signature: readonly number[], at = 0): boolean =>
  bytes.length >= at + signature.length && signature.every((byte, index) => bytes[at + index] === byte);

const ascii = (word: string): readonly number[] => [...word].map((letter) => letter.charCodeAt(0));

const JPEG_END = [0xff, 0xd9];

/** A JPEG from its first marker to its last; some cameras pad behind it. */
const isJpeg = (bytes: Uint8Array): boolean =>
  startsWith(bytes, [0xff, 0xd8, 0xff]) &&
  bytes.some((_, at) => at > 3 && at >= bytes.length - 4096 && startsWith(bytes, JPEG_END, at));

const isPng = (bytes: Uint8Array): boolean =>
  startsWith(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]) && startsWith(bytes, ascii('IHDR'), 12);

function isWebp(bytes: Uint8Array): boolean {
  if (!startsWith(bytes, ascii('RIFF')) || !startsWith(bytes, ascii('WEBP'), 8)) return false;
  const claimed = new DataView(bytes.buffer, bytes.byteOffset).getUint32(4, true);
  // All after the first eight bytes; an odd length is padded by one.
  return claimed + 8 <= bytes.length;
}

/**
 * What kind of photo some bytes are, by their own signature and never by what their sender calls them; null: none that is
 * kept.
 *
 * Source: ISO/IEC 10918-1 annex B (JPEG), ISO/IEC 15948 §5.2 (PNG), RFC 9649 §2.4 (WebP).
 */
export function imageKind(bytes: Uint8Array): ImageType | null {
  if (isJpeg(bytes)) return 'image/jpeg';
  if (isPng(bytes)) return 'image/png';
  return isWebp(bytes) ? 'image/webp' : null;
}
