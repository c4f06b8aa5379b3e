import { LibsqlError } from '@libsql/client';
import { DrizzleQueryError } from 'drizzle-orm/errors';
import { describe, expect, it } from 'vitest';
import { isHeldUp, StoreTrouble, storeTrouble, troubleUnder } from '../../api/db/store-trouble.ts';

/** A request that got no answer, as Node's fetch throws it. */
const noAnswer = (code: string): Error =>
  new TypeError('fetch failed', { cause: Object.assign(new Error(`connect ${code}`), { code }) });

/** As the client has an error of a server: the whole code at once, and no other. */
const ofServer = (code: string): Error => new LibsqlError('it said no', code);

/** As it has one of a file: the plain code, and the whole one beside it. */
const ofFile = (code: string, extended: string): Error => new LibsqlError('it said no', code, extended);

describe('trouble of the store', () => {
  // Codes: sqlite.org/rescode.html; Node's errors.html; the client's own as read in its source.
  it.each([
    ['a server that is gone', noAnswer('ECONNREFUSED'), 'away', /does not answer/],
    ['a server that is not found', noAnswer('ENOTFOUND'), 'away', /does not answer/],
    ['a server too slow to connect to', noAnswer('UND_ERR_CONNECT_TIMEOUT'), 'away', /does not answer/],
    ['a server that hung up', noAnswer('UND_ERR_SOCKET'), 'away', /does not answer/],
    ['a request that failed and says no more', new TypeError('fetch failed'), 'away', /does not answer/],
    ['a socket that closed', ofServer('HRANA_WEBSOCKET_ERROR'), 'away', /does not answer/],
    ['a server that refuses', ofServer('SERVER_ERROR'), 'away', /refuses.*authToken/],
    [
      'a file that another program holds',
      ofFile('SQLITE_BUSY', 'SQLITE_BUSY_SNAPSHOT'),
      'busy',
      /another program/,
    ],
    ['a server that is busy', ofServer('SQLITE_BUSY'), 'busy', /another program/],
    ['a full disk', ofFile('SQLITE_FULL', 'SQLITE_FULL'), 'here', /Make room/],
    ['a full disk of a server', ofServer('SQLITE_FULL'), 'here', /Make room/],
    ['a damaged file', ofFile('SQLITE_CORRUPT', 'SQLITE_CORRUPT_VTAB'), 'here', /is damaged/],
    ['a file that was moved', ofServer('SQLITE_READONLY_DBMOVED'), 'here', /moved or deleted/],
    ['a file without rights', ofFile('SQLITE_READONLY', 'SQLITE_READONLY'), 'here', /may not be written to/],
  ] as const)('%s', (_, error, kind, words) => {
    for (const thrown of [error, new DrizzleQueryError('select 1', ['Mrs Secret'], error)]) {
      const trouble = storeTrouble('/place/store.db', thrown);
      expect(trouble).toBeInstanceOf(StoreTrouble);
      expect([trouble?.kind, trouble?.message]).toEqual([kind, expect.stringMatching(words)]);
      expect(trouble?.message).toContain('/place/store.db');
      expect(trouble?.withoutPlace).toMatch(words);
      expect(trouble?.withoutPlace).not.toContain('/place');
      expect(`${trouble?.stack} ${String((trouble?.cause as Error | undefined)?.stack)}`).not.toContain(
        'Mrs Secret',
      );
      expect(isHeldUp(thrown)).toBe(kind === 'busy');
    }
  });

  it('is none where the program is at fault', () => {
    for (const error of [new TypeError('x is undefined'), new RangeError('too far'), 'words', null])
      expect(storeTrouble('/place', error)).toBeNull();
  });

  it('is found under what wraps it, and told once', () => {
    const trouble = new StoreTrouble('told');
    const wrapped = new Error('a', { cause: new Error('b', { cause: trouble }) });
    expect(troubleUnder(wrapped)).toBe(trouble);
    expect(storeTrouble('/elsewhere', wrapped)).toBe(trouble);
    expect(troubleUnder(new Error('c'))).toBeNull();
  });
});
