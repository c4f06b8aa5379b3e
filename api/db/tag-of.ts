import { createHash } from 'node:crypto';

/** Digits of a tag: 64 bits, so that no two texts that ever share a number have one tag. */
const TAG_DIGITS = 16;

/**
 * The short word that tells a text from any other under the same revision number: hexadecimal digits, the same for
 * the same text in every store.
 */
export const tagOf = (text: string): string =>
  createHash('sha256').update(text).digest('hex').slice(0, TAG_DIGITS);
