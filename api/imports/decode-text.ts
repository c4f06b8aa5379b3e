import { UnreadableSheet } from './sheet-fault.ts';

/** A share of noughts among every second byte from which text must be of two bytes a character. */
const MOSTLY = 0.4;

/** How often a byte is nought at every second place from `start`. */
function noughts(bytes: Uint8Array, start: number): number {
  let [count, all] = [0, 0];
  for (let at = start; at < Math.min(bytes.length, 4096); at += 2) {
    all++;
    if (bytes[at] === 0) count++;
  }
  return all === 0 ? 0 : count / all;
}

function encodingOf(bytes: Uint8Array): string {
  const [first, second, third] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  if (first === 0xef && second === 0xbb && third === 0xbf) return 'utf-8';
  if (noughts(bytes, 1) > MOSTLY) return 'utf-16le';
  if (noughts(bytes, 0) > MOSTLY) return 'utf-16be';
  return isUtf8(bytes) ? 'utf-8' : 'windows-1252';
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}

/**
 * The text of a file, without its byte-order mark: UTF-8, UTF-16 by its mark or its noughts, else Western European as
 * older programs write it (windows-1252, which holds Latin 1).
 */
export function decodedText(bytes: Uint8Array): string {
  const text = new TextDecoder(encodingOf(bytes)).decode(bytes);
  if (!text.includes('\u0000')) return text;
  throw new UnreadableSheet({
    path: 'file',
    message: 'it is neither a text nor a workbook that can be read',
    remedy: 'Save it as CSV or as XLSX, and choose that file',
  });
}
