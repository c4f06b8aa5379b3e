import { describe, expect, it } from 'vitest';
import { signInStore } from '../../api/db/sign-in-store.ts';
import { appOver, NO_OWNER } from '../../api/http/app-over.ts';
import { cheapPasswords, cookieOf, PASSWORD, signedInApp } from './signed-in.ts';

const MINUTE_MS = 60_000;
const DAY_MS = 24 * 60 * MINUTE_MS;
const OWNER = 'owner@own.example';

const statusOf = async (asked: Promise<Response>) => (await asked).status;
const codeOf = async (asked: Promise<Response>) => {
  const answer = await asked;
  return [answer.status, (await answer.json()).code];
};

describe('signing in', () => {
  it('is by e-mail address, however it is written, and password; the cookie is the browser’s alone', async () => {
    const { signIn, ask } = await signedInApp();
    const answer = await signIn('  Owner@OWN.example ');
    expect([answer.status, (await answer.json()).person.email]).toEqual([200, OWNER]);
    const set = answer.headers.get('set-cookie') ?? '';
    // Source: OWASP Session Management Cheat Sheet, cookie attributes (from memory).
    expect(set).toMatch(/^ringwright=[\w-]{43};/);
    for (const attribute of ['HttpOnly', 'SameSite=Strict', 'Path=/']) expect(set).toContain(attribute);
    const session = await ask('GET', '/api/session', { cookie: cookieOf(answer) });
    expect(await session.json()).toMatchObject({ signIn: true, firm: 'own', role: 'owner' });
    expect(await (await ask('GET', '/api/session')).json()).toMatchObject({ signIn: true, firm: null });
  });

  it('has a cookie that goes over TLS alone where browsers have that', async () => {
    const { signIn, ask } = await signedInApp({ secureCookies: true });
    const answer = await signIn(OWNER);
    expect(answer.headers.get('set-cookie')).toMatch(/^__Host-ringwright=[\w-]{43};.*Secure/);
    expect(await statusOf(ask('GET', '/api/jobs', { cookie: cookieOf(answer) }))).toBe(200);
    const renamed = cookieOf(answer).replace('__Host-', '');
    expect(await statusOf(ask('GET', '/api/jobs', { cookie: renamed }))).toBe(401);
  });

  it('tells an unknown address and a wrong password alike', async () => {
    const { signIn } = await signedInApp();
    const wrong = await signIn(OWNER, 'copper and oak board');
    const unknown = await signIn('nobody@own.example', PASSWORD);
    // Each request has an id of its own, which its answer names.
    const told = async (answer: Response) => ({ ...(await answer.json()), requestId: null });
    expect([wrong.status, await told(wrong)]).toEqual([unknown.status, await told(unknown)]);
    expect(wrong.status).toBe(401);
  });

  it('keeps hashes of tokens alone', async () => {
    const { signIn, database } = await signedInApp();
    const token = cookieOf(await signIn(OWNER)).split('=')[1] ?? '';
    const rows = await database.write((writer) => writer.all('select * from sessions'));
    expect(rows).toHaveLength(1);
    expect(JSON.stringify(rows)).not.toContain(token);
  });

  it('is refused with a wait that grows, for an account and from an address, and not for ever', async () => {
    const { signIn, clock } = await signedInApp();
    for (let i = 0; i < 5; i += 1) expect(await statusOf(signIn(OWNER, 'wrong'))).toBe(401);
    const refused = await signIn(OWNER);
    expect([refused.status, refused.headers.get('retry-after')]).toEqual([429, '10']);
    expect((await refused.json()).code).toBe('too-many-attempts');
    clock.pass(10_000);
    expect(await statusOf(signIn(OWNER, 'wrong'))).toBe(401);
    expect((await signIn(OWNER)).headers.get('retry-after')).toBe('20');
    clock.pass(20_000);
    expect(await statusOf(signIn(OWNER))).toBe(200);
    // A right one begins the count anew.
    expect(await statusOf(signIn(OWNER, 'wrong'))).toBe(401);
    expect(await statusOf(signIn(OWNER))).toBe(200);
  });

  it('is slowed down from one address, whatever account is guessed at', async () => {
    const { signIn, clock } = await signedInApp();
    for (let i = 0; i < 20; i += 1) expect(await statusOf(signIn(`p${i}@own.example`, 'wrong'))).toBe(401);
    expect(await statusOf(signIn(OWNER))).toBe(429);
    clock.pass(MINUTE_MS);
    expect(await statusOf(signIn(OWNER))).toBe(200);
  });

  it('goes by what the proxy adds to X-Forwarded-For, and by nobody’s word without a proxy', async () => {
    const behind = await signedInApp({ publicOrigin: 'https://jobs.example', secureCookies: true });
    const from = (address: string) => ({ 'x-forwarded-for': `203.0.113.1, ${address}` });
    for (let i = 0; i < 20; i += 1) await behind.signIn(`p${i}@own.example`, 'wrong', from('198.51.100.7'));
    expect(await statusOf(behind.signIn(OWNER, PASSWORD, from('198.51.100.7')))).toBe(429);
    expect(await statusOf(behind.signIn(OWNER, PASSWORD, from('198.51.100.8')))).toBe(200);
    const open = await signedInApp();
    for (let i = 0; i < 20; i += 1) await open.signIn(`p${i}@own.example`, 'wrong', from(`198.51.100.${i}`));
    expect(await statusOf(open.signIn(OWNER, PASSWORD, from('198.51.100.99')))).toBe(429);
  });

  it('counts on after a restart, and waits no longer than its span when the clock is set back', async () => {
    const { signIn, clock } = await signedInApp();
    for (let i = 0; i < 9; i += 1) {
      await signIn(OWNER, 'wrong');
      clock.pass(15 * MINUTE_MS);
    }
    clock.pass(-30 * DAY_MS);
    const refused = await signIn(OWNER);
    expect(refused.status).toBe(429);
    expect(Number(refused.headers.get('retry-after'))).toBeLessThanOrEqual(15 * 60);
    clock.pass(15 * MINUTE_MS);
    expect(await statusOf(signIn(OWNER))).toBe(200);
  });
});

describe('a session', () => {
  it('ends when it is signed out, and only that one', async () => {
    const { signIn, ask } = await signedInApp();
    const [one, other] = [cookieOf(await signIn(OWNER)), cookieOf(await signIn(OWNER))];
    const out = await ask('DELETE', '/api/session', { cookie: one });
    expect([out.status, out.headers.get('set-cookie')]).toEqual([204, expect.stringContaining('Max-Age=0')]);
    expect(await statusOf(ask('GET', '/api/jobs', { cookie: one }))).toBe(401);
    expect(await statusOf(ask('GET', '/api/jobs', { cookie: other }))).toBe(200);
  });

  it('goes on while it is used, ends two weeks after its last use, and sixty days after its beginning', async () => {
    const { signIn, ask, clock } = await signedInApp();
    const cookie = cookieOf(await signIn(OWNER));
    for (let day = 10; day < 60; day += 10) {
      clock.pass(10 * DAY_MS);
      expect([day, await statusOf(ask('GET', '/api/jobs', { cookie }))]).toEqual([day, 200]);
    }
    clock.pass(10 * DAY_MS);
    expect(await statusOf(ask('GET', '/api/jobs', { cookie }))).toBe(401);
    const idle = cookieOf(await signIn(OWNER));
    clock.pass(14 * DAY_MS);
    expect(await statusOf(ask('GET', '/api/jobs', { cookie: idle }))).toBe(401);
  });

  it('is not lengthened by a clock that is set back', async () => {
    const { signIn, ask, clock } = await signedInApp();
    const cookie = cookieOf(await signIn(OWNER));
    clock.pass(-DAY_MS);
    expect(await statusOf(ask('GET', '/api/jobs', { cookie }))).toBe(401);
    expect(await statusOf(signIn(OWNER))).toBe(200);
  });

  it('has the browser refused that another site sends, cookie and all', async () => {
    const { signIn, ask } = await signedInApp();
    const cookie = cookieOf(await signIn(OWNER));
    for (const headers of [{ origin: 'https://elsewhere.example' }, { 'sec-fetch-site': 'same-site' }])
      expect(await codeOf(ask('POST', '/api/demos', { cookie, body: '{}', headers }))).toEqual([
        403,
        'foreign-origin',
      ]);
  });

  it('names how to sign in where there is none', async () => {
    const answer = await (await signedInApp()).ask('GET', '/api/jobs');
    expect([answer.status, answer.headers.get('www-authenticate')]).toEqual([
      401,
      'Session realm="Ringwright"',
    ]);
  });

  it.each([
    ['role', 'PUT', '{"role":"estimator"}', '/role'],
    ['account', 'DELETE', undefined, ''],
  ])('ends with a change of its %s', async (_, method, body, ending) => {
    const { person, signIn, ask } = await signedInApp();
    const owner = cookieOf(await signIn(OWNER));
    const cookie = await person({ email: 'x@own.example', role: 'read-only', firmId: 'own' });
    expect(await statusOf(ask('GET', '/api/jobs', { cookie }))).toBe(200);
    const path = `/api/people/x-own-example${ending}`;
    const changed = await ask(method, path, { cookie: owner, ...(body === undefined ? {} : { body }) });
    expect(changed.status).toBe(204);
    expect(await statusOf(ask('GET', '/api/jobs', { cookie }))).toBe(401);
    expect(await statusOf(signIn('x@own.example'))).toBe(method === 'DELETE' ? 401 : 200);
  });
});

describe('one’s own password', () => {
  it('is changed by whoever knows the one of now, and ends every other session', async () => {
    const { signIn, ask } = await signedInApp();
    const [mine, elsewhere] = [cookieOf(await signIn(OWNER)), cookieOf(await signIn(OWNER))];
    const change = (current: string, password: string) =>
      ask('PUT', '/api/session/password', { cookie: mine, body: JSON.stringify({ current, password }) });
    expect(await codeOf(change('not this one', 'a new one of length'))).toEqual([403, 'not-allowed']);
    expect(await codeOf(change(PASSWORD, 'elevenchars'))).toEqual([422, 'body-unreadable']);
    expect(await codeOf(change(PASSWORD, 'x'.repeat(201)))).toEqual([422, 'body-unreadable']);
    expect(await statusOf(change(PASSWORD, 'twelve chars'))).toBe(204);
    expect(await statusOf(ask('GET', '/api/jobs', { cookie: mine }))).toBe(200);
    expect(await statusOf(ask('GET', '/api/jobs', { cookie: elsewhere }))).toBe(401);
    expect(await statusOf(signIn(OWNER))).toBe(401);
    expect(await statusOf(signIn(OWNER, 'twelve chars'))).toBe(200);
  });
});

describe('an invitation', () => {
  const invited = async () => {
    const made = await signedInApp();
    const owner = cookieOf(await made.signIn(OWNER));
    const body = '{"name":"Apprentice","role":"read-only"}';
    const invitation = await (
      await made.ask('POST', '/api/people/invitations', { cookie: owner, body })
    ).json();
    const use = (changes: object = {}) =>
      made.ask('POST', '/api/invitation/use', {
        body: JSON.stringify({
          token: invitation.token,
          email: 'new@own.example',
          password: PASSWORD,
          ...changes,
        }),
      });
    return { ...made, owner, invitation, use };
  };

  it('makes an account of its role, once, and signs in', async () => {
    const { use, ask, database, invitation } = await invited();
    const look = { body: JSON.stringify({ token: invitation.token }) };
    expect(await (await ask('POST', '/api/invitation', look)).json()).toMatchObject({
      name: 'Apprentice',
      role: 'read-only',
      isNewAccount: true,
    });
    const used = await use({ name: 'A. Prentice' });
    expect(await used.json()).toMatchObject({
      firm: 'own',
      role: 'read-only',
      person: { name: 'A. Prentice' },
    });
    expect(await statusOf(ask('GET', '/api/jobs', { cookie: cookieOf(used) }))).toBe(200);
    expect(await codeOf(use({ email: 'second@own.example' }))).toEqual([404, 'no-such-invitation']);
    const rows = await database.write((writer) => writer.all('select * from invitations'));
    expect(JSON.stringify(rows)).not.toContain(invitation.token);
  });

  it('goes for a week, and not once it is withdrawn', async () => {
    const { use, clock, ask, owner, invitation } = await invited();
    clock.pass(7 * DAY_MS);
    expect(await codeOf(use())).toEqual([404, 'no-such-invitation']);
    clock.pass(-DAY_MS);
    const gone = await ask('DELETE', `/api/people/invitations/${invitation.id}`, { cookie: owner });
    expect(gone.status).toBe(204);
    expect(await codeOf(use())).toEqual([404, 'no-such-invitation']);
  });

  it('wants an address that is free, and stays when it was not', async () => {
    const { use } = await invited();
    expect(await codeOf(use({ email: 'OWNER@own.example' }))).toEqual([409, 'email-taken']);
    expect(await statusOf(use())).toBe(200);
  });

  it('sets a new password of an account, and of no closed one', async () => {
    const { ask, owner, signIn, person } = await invited();
    const cookie = await person({ email: 'x@own.example', role: 'estimator', firmId: 'own' });
    const link = async () =>
      (await ask('POST', '/api/people/x-own-example/password', { cookie: owner })).json();
    const use = async (token: string) =>
      ask('POST', '/api/invitation/use', { body: JSON.stringify({ token, password: 'another one now' }) });
    const first = await link();
    const second = await link();
    expect(await codeOf(use(first.token))).toEqual([404, 'no-such-invitation']);
    expect(await statusOf(use(second.token))).toBe(200);
    expect(await statusOf(ask('GET', '/api/jobs', { cookie }))).toBe(401);
    expect(await statusOf(signIn('x@own.example', 'another one now'))).toBe(200);
    const third = await link();
    await ask('DELETE', '/api/people/x-own-example', { cookie: owner });
    expect(await codeOf(use(third.token))).toEqual([404, 'no-such-invitation']);
  });
});

describe('people', () => {
  it('keep an owner', async () => {
    const { ask, signIn, person } = await signedInApp();
    const owner = cookieOf(await signIn(OWNER));
    const at = '/api/people/owner-own-example';
    expect(await codeOf(ask('DELETE', at, { cookie: owner }))).toEqual([409, 'last-owner']);
    const demoted = ask('PUT', `${at}/role`, { cookie: owner, body: '{"role":"estimator"}' });
    expect(await codeOf(demoted)).toEqual([409, 'last-owner']);
    const second = await person({ email: 'second@own.example', role: 'owner', firmId: 'own' });
    expect(await statusOf(ask('DELETE', at, { cookie: second }))).toBe(204);
    expect(await codeOf(ask('DELETE', '/api/people/second-own-example', { cookie: second }))).toEqual([
      409,
      'last-owner',
    ]);
  });

  it('whose account is closed may be let in again by the same address', async () => {
    const { ask, signIn, person } = await signedInApp();
    const owner = cookieOf(await signIn(OWNER));
    await person({ email: 'x@own.example', role: 'estimator', firmId: 'own' });
    await ask('DELETE', '/api/people/x-own-example', { cookie: owner });
    const body = '{"name":"X","role":"estimator"}';
    const { token } = await (await ask('POST', '/api/people/invitations', { cookie: owner, body })).json();
    const used = { token, email: 'x@own.example', password: PASSWORD };
    expect(await statusOf(ask('POST', '/api/invitation/use', { body: JSON.stringify(used) }))).toBe(200);
  });
});

describe('a server that others reach', () => {
  it('does not come to be before somebody is set up who can sign in', async () => {
    const { database, clock } = await signedInApp();
    await database.write((writer) =>
      writer.run("update accounts set closed_at = '2026-11-25T09:00:00.000Z'"),
    );
    expect(await signInStore(database, clock.now).hasOwner()).toBe(false);
    const settings = {
      ...{ screenFolder: '/none', version: '1', hostNames: [], publicOrigin: null, tls: null },
      ...{ signIn: true, secureCookies: true },
    };
    const log = { say: () => {}, complain: () => {}, request: () => {} };
    const parts = {
      demoJobs: [],
      demoLibrary: {} as never,
      now: clock.now,
      log,
      passwords: cheapPasswords(),
    };
    await expect(appOver(database, { ...parts, settings })).rejects.toThrow(NO_OWNER);
    await expect(
      appOver(database, { ...parts, settings: { ...settings, signIn: false } }),
    ).resolves.toBeDefined();
  });
});
