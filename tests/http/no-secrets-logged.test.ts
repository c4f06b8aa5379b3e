import { describe, expect, it } from 'vitest';
import { signInStore } from '../../api/db/sign-in-store.ts';
import { loggable } from '../../api/http/loggable.ts';
import { cookieOf, PASSWORD, signedInApp } from './signed-in.ts';

describe('what is logged', () => {
  it('has no password, no token and nobody’s address, whatever is sent and whatever breaks', async () => {
    const { ask, signIn, logged, database, clock } = await signedInApp();
    const owner = cookieOf(await signIn('owner@own.example'));
    const body = '{"name":"New","role":"estimator"}';
    const invitation = await (await ask('POST', '/api/people/invitations', { cookie: owner, body })).json();
    await signIn('owner@own.example', 'a wrong password 1');
    await signIn('nobody@own.example', 'a wrong password 2');
    await ask('POST', '/api/invitation', { body: JSON.stringify({ token: invitation.token }) });
    await ask('POST', '/api/shared-quotation', { body: JSON.stringify({ token: 'y'.repeat(43) }) });
    await ask('POST', '/api/session', { body: '{"email":' });
    // From here on every statement fails, and the error carries it with its values.
    for (const table of ['sessions', 'invitations', 'quotation_links'])
      await database.write((writer) => writer.run(`alter table ${table} rename to gone_${table}`));
    const broken = [
      await ask('GET', '/api/jobs', { cookie: owner }),
      await signIn('owner@own.example'),
      await ask('POST', '/api/invitation', { body: JSON.stringify({ token: invitation.token }) }),
      await ask('POST', '/api/shared-quotation', { body: JSON.stringify({ token: 'z'.repeat(43) }) }),
    ];
    for (const answer of broken) expect(answer.status).toBeGreaterThanOrEqual(500);
    await expect(signInStore(database, clock.now).session('hash-of-a-token')).rejects.toThrow();
    expect(logged.length).toBeGreaterThanOrEqual(broken.length);
    const all = logged.join('\n');
    const secrets = [
      PASSWORD,
      'a wrong password',
      owner.split('=')[1] ?? 'none',
      invitation.token,
      'y'.repeat(43),
      'z'.repeat(43),
      'own.example',
      '$scrypt$',
    ];
    expect(secrets.filter((secret) => all.includes(secret))).toEqual([]);
    // Nor what is kept of them.
    expect(all).not.toMatch(/[0-9a-f]{64}/);
  });

  it('is the bare error of the store, without the statement and its values', () => {
    const bare = new Error('no such table: sessions');
    const wrapped = new Error('Failed query: select … params: secret', { cause: bare });
    wrapped.name = 'Error';
    expect(loggable(Object.assign(wrapped, { query: 'select …', params: ['secret'] }))).toBe(bare);
    const other = new Error('another');
    expect(loggable(other)).toBe(other);
    expect(loggable('a text')).toBe('a text');
  });
});
