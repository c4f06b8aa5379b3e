import type { Job } from '#model/job.ts';
import { withoutPictures } from './plan/without-pictures.ts';

/** Digits and letters that nobody reads one for another: no I, L, O, U. */
const LETTERS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
/** The offset basis, by its upper and its lower half. */
const OFFSET_HIGH = 0xcbf29ce4;
const OFFSET_LOW = 0x84222325;
/** The prime is 2^40 and this. */
const PRIME_LOW = 0x1b3;
const TWO_TO_32 = 2 ** 32;
const MASK_40 = (1n << 40n) - 1n;

/**
 * The 64-bit FNV-1a hash of a text of plain ASCII. Worked in two halves of 32 bits: a number for every letter of a job's text would
 * take longer than reading the job.
 *
 * Source: the FNV-1a algorithm as its authors published it (offset basis and prime of 64 bits).
 */
export function fnv1a(text: string): bigint {
  let [high, low] = [OFFSET_HIGH, OFFSET_LOW];
  for (let at = 0; at < text.length; at++) {
    low = (low ^ text.charCodeAt(at)) >>> 0;
    // Times the prime: the lower half by 2^40 is eight places up in the upper one.
    const product = low * PRIME_LOW;
    high = (Math.imul(high, PRIME_LOW) + Math.floor(product / TWO_TO_32) + (low << 8)) >>> 0;
    low = product >>> 0;
  }
  return (BigInt(high) << 32n) | BigInt(low);
}

/** A value as JSON with its keys in order, so that the same facts are the same text however they were written. */
function ordered(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(ordered);
  if (typeof value !== 'object' || value === null) return value;
  const keys = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return keys.map(([key, inside]) => [key, inside === undefined ? undefined : ordered(inside)]);
}

const ascii = (text: string): string =>
  text.replace(/[^ -~]/g, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`);

/**
 * A short name of a job's state, such as `7K3M-9QDX`, that its papers carry: the same facts give the same name on
 * screen, in every paper and on every machine, whatever was done and undone between; others give, but for one
 * chance in a million million, another. What is carried along in case is no fact of the job, nor is a picture, nor which tasks are
 * ticked: papers that are handed out say nothing of them.
 */
export function stateTag({ packFor: _packFor, done: _done, ...job }: Job): string {
  const present = JSON.parse(JSON.stringify(withoutPictures(job)));
  const hash = fnv1a(ascii(JSON.stringify(ordered(present))));
  let rest = (hash >> 40n) ^ (hash & MASK_40);
  let tag = '';
  for (let at = 0; at < 8; at++) {
    tag = `${LETTERS.charAt(Number(rest & 31n))}${tag}`;
    rest >>= 5n;
  }
  return `${tag.slice(0, 4)}-${tag.slice(4)}`;
}
