import { createHash, randomBytes } from 'node:crypto';

/** Nobody guesses 256 bits. */
const TOKEN_BYTES = 32;
const TOKEN = /^[A-Za-z0-9_-]{43}$/;

/** What is handed out, and what is kept of it. */
export interface Token {
  readonly token: string;
  readonly tokenHash: string;
}

/** SHA-256 of a token, hexadecimal: from what is kept nobody gets what was handed out. */
export const tokenHashOf = (token: string): string => createHash('sha256').update(token).digest('hex');

/** A new token that nobody can guess. */
export function newToken(): Token {
  const token = randomBytes(TOKEN_BYTES).toString('base64url');
  return { token, tokenHash: tokenHashOf(token) };
}

/** Whether a text may be a token at all. */
export const isToken = (text: string): boolean => TOKEN.test(text);

/** A short id for something that is told by another name to people. */
export const newRecordId = (): string => randomBytes(9).toString('hex');
