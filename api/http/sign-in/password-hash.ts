import { randomBytes, type ScryptOptions, scrypt, timingSafeEqual } from 'node:crypto';
import { Turns } from './turns.ts';

/** What a hash costs to make. */
export interface ScryptCost {
  /** Base-2 logarithm of N. */
  readonly logN: number;
  readonly r: number;
  readonly p: number;
}

/** Whether a password was right, and whether its hash is made anew at today's cost. */
export interface Matched {
  readonly isRight: boolean;
  readonly isOutdated: boolean;
}

/** How passwords are kept and compared. */
export interface Passwords {
  /** With its salt and its cost, in one text. */
  readonly hash: (password: string) => Promise<string>;
  /** @param stored null: there is no such account; it takes as long. */
  readonly matches: (password: string, stored: string | null) => Promise<Matched>;
}

/** The least and the most characters of a password; no other rules. Source: NIST SP 800-63B, 5.1.1.2 (from memory; 8 is its least). */
export const PASSWORD_LENGTHS = { least: 12, most: 200 } as const;

/** The cost of today: 128 MiB for a moment. Source: OWASP Password Storage Cheat Sheet, scrypt (from memory). */
export const FULL_COST: ScryptCost = { logN: 17, r: 8, p: 1 };

const SALT_BYTES = 16;
const KEY_BYTES = 32;
/** So many are worked out at once: each takes the memory of its cost. */
const AT_ONCE = 2;
/** So many wait at most; beyond, whoever asks is told to come again. */
const WAITING_MOST = 32;

const STORED = /^\$scrypt\$ln=(\d{1,2}),r=(\d{1,3}),p=(\d{1,3})\$([A-Za-z0-9+/]{16,})\$([A-Za-z0-9+/]{16,})$/;

function derived(password: string, salt: Buffer, { logN, r, p }: ScryptCost): Promise<Buffer> {
  const N = 2 ** logN;
  // What it needs is 128·N·r bytes and a little; node refuses what is not allowed for.
  const options: ScryptOptions = { N, r, p, maxmem: 256 * N * r };
  return new Promise((resolve, reject) => {
    scrypt(password.normalize('NFKC'), salt, KEY_BYTES, options, (error, key) =>
      error === null ? resolve(key) : reject(error),
    );
  });
}

const base64 = (bytes: Buffer): string => bytes.toString('base64').replace(/=+$/, '');

interface Read {
  readonly cost: ScryptCost;
  readonly salt: Buffer;
  readonly key: Buffer;
}

function read(stored: string): Read {
  const [, logN, r, p, salt = '', key = ''] = STORED.exec(stored) ?? [];
  if (logN === undefined) throw new Error('A stored password hash is of no known form.');
  return {
    cost: { logN: Number(logN), r: Number(r), p: Number(p) },
    salt: Buffer.from(salt, 'base64'),
    key: Buffer.from(key, 'base64'),
  };
}

const isSame = (a: ScryptCost, b: ScryptCost): boolean => a.logN === b.logN && a.r === b.r && a.p === b.p;

/**
 * Passwords by scrypt of node's own cryptography, at most a few at once. Rejects with `TooMany` where too many wait.
 *
 * @param cost what new hashes cost; stored ones are compared at their own.
 */
export function scryptPasswords(cost: ScryptCost = FULL_COST): Passwords {
  const turns = new Turns(AT_ONCE, WAITING_MOST);
  const nobody: Read = { cost, salt: randomBytes(SALT_BYTES), key: randomBytes(KEY_BYTES) };
  return {
    hash: (password) =>
      turns.take(async () => {
        const salt = randomBytes(SALT_BYTES);
        const key = await derived(password, salt, cost);
        return `$scrypt$ln=${cost.logN},r=${cost.r},p=${cost.p}$${base64(salt)}$${base64(key)}`;
      }),
    matches: (password, stored) =>
      turns.take(async () => {
        const kept = stored === null ? nobody : read(stored);
        const key = await derived(password, kept.salt, kept.cost);
        const isEqual = key.length === kept.key.length && timingSafeEqual(key, kept.key);
        return { isRight: isEqual && stored !== null, isOutdated: !isSame(kept.cost, cost) };
      }),
  };
}
