import { beforeAll, describe, expect, it } from 'vitest';
import { readPdf } from '#tests/exports/pdf-reader.ts';
import { cookieOf, issueAs, type SignedInApp, signedInApp } from './signed-in.ts';

const DAY_MS = 24 * 60 * 60_000;
const JOB = 'linked-job';

let server: SignedInApp;
let owner: string;
beforeAll(async () => {
  server = await signedInApp();
  owner = cookieOf(await server.signIn('owner@own.example'));
  await issueAs(server, owner, { jobId: JOB, quotationId: 'q1' });
});

const at = `/api/jobs/${JOB}/quotations/q1`;
const make = async (body = '{}') => (await server.ask('POST', `${at}/links`, { cookie: owner, body })).json();
const open = (token: string, path = '') =>
  server.ask('POST', `/api/shared-quotation${path}`, { body: JSON.stringify({ token }) });
/** Each request has an id of its own, which its answer names. */
const told = async (answer: Response) => [
  answer.status,
  (await answer.text()).replaceAll(answer.headers.get('x-request-id') ?? '-', '<request>'),
];

describe('a link for a customer', () => {
  it('shows the quotation as it was issued, to whoever has it, and nothing that the firm had to see to', async () => {
    const { token } = await make();
    const answer = await open(token);
    expect([answer.status, answer.headers.get('cache-control')]).toEqual([200, 'no-store']);
    expect(answer.headers.get('x-robots-tag')).toBe('noindex, nofollow');
    expect(answer.headers.get('referrer-policy')).toBe('no-referrer');
    const shown = await answer.json();
    const frozen = await (await server.ask('GET', `${at}/frozen/document`, { cookie: owner })).json();
    expect(shown.document).toEqual({ ...frozen, beforeSending: [] });
    expect(Object.keys(shown).sort()).toEqual(['document', 'drawings', 'expiresAt', 'status']);
    const pdf = await open(token, '/quotation.pdf');
    expect([pdf.headers.get('content-type'), pdf.headers.get('cache-control')]).toEqual([
      'application/pdf',
      'no-store',
    ]);
    const text = await readPdf(new Uint8Array(await pdf.arrayBuffer()));
    expect(JSON.stringify(text)).toContain(frozen.reference);
  });

  it('opens nothing else', async () => {
    const { token } = await make();
    for (const cookie of [`ringwright=${token}`, `__Host-ringwright=${token}`])
      expect((await server.ask('GET', `/api/jobs/${JOB}`, { cookie })).status).toBe(401);
    const asInvitation = await server.ask('POST', '/api/invitation', { body: JSON.stringify({ token }) });
    expect(asInvitation.status).toBe(404);
  });

  it('answers alike when it is wrong, expired or withdrawn', async () => {
    const { token, id } = await make('{"days":3}');
    const refused = await open('x'.repeat(43));
    expect(refused.headers.get('cache-control')).toBe('no-store');
    const wrong = await told(refused);
    expect([wrong[0], JSON.parse(String(wrong[1])).code]).toEqual([404, 'no-such-link']);
    expect(await told(await open('no token at all'))).toEqual(wrong);
    server.clock.pass(3 * DAY_MS);
    expect(await told(await open(token))).toEqual(wrong);
    server.clock.pass(-DAY_MS);
    expect((await open(token)).status).toBe(200);
    await server.ask('DELETE', `${at}/links/${id}`, { cookie: owner });
    expect(await told(await open(token))).toEqual(wrong);
    expect(await told(await open(token, '/quotation.pdf'))).toEqual(wrong);
  });

  it('goes as long as the quotation holds, or for as long as is asked, and never beyond ninety days', async () => {
    const { expiresAt, madeAt } = await make('{"days":5}');
    expect(Date.parse(expiresAt) - Date.parse(madeAt)).toBe(5 * DAY_MS);
    const { quotations } = await (
      await server.ask('GET', `/api/jobs/${JOB}/quotations`, { cookie: owner })
    ).json();
    const [{ validUntil }] = quotations;
    const unasked = await make();
    if (validUntil !== null && validUntil > madeAt) expect(unasked.expiresAt.slice(0, 10)).toBe(validUntil);
    else expect(Date.parse(unasked.expiresAt) - Date.parse(unasked.madeAt)).toBe(30 * DAY_MS);
    const tooLong = await server.ask('POST', `${at}/links`, { cookie: owner, body: '{"days":91}' });
    expect(tooLong.status).toBe(422);
  });

  it('is told once: what is kept and listed is no link', async () => {
    const { token } = await make();
    const rows = await server.database.write((writer) => writer.all('select * from quotation_links'));
    const listed = await (await server.ask('GET', `${at}/links`, { cookie: owner })).text();
    expect(JSON.stringify(rows)).not.toContain(token);
    expect(listed).not.toContain(token);
  });

  it('is guessed at slowly, and a right one is not counted', async () => {
    const { token } = await make();
    for (let i = 0; i < 30; i += 1) expect((await open(token)).status).toBe(200);
    for (let i = 0; i < 20; i += 1) await open(String(i).padStart(43, 'x'));
    const refused = await open(token);
    expect([refused.status, Number(refused.headers.get('retry-after'))]).toEqual([429, 10]);
    server.clock.pass(60_000);
    expect((await open(token)).status).toBe(200);
  });

  // Last: what is erased is not there any more.
  it('says that it was withdrawn, and shows nothing once the customer is erased', async () => {
    const { token } = await make();
    const record = await (await server.ask('GET', at, { cookie: owner })).json();
    const noted = await server.ask('POST', `${at}/notes`, {
      cookie: owner,
      body: '{"kind":"withdrawn","on":"2026-11-25"}',
      headers: { 'if-match': record.etag },
    });
    expect(noted.status).toBe(200);
    expect((await (await open(token)).json()).status).toBe('withdrawn');
    const etag = (await server.ask('GET', `/api/jobs/${JOB}`, { cookie: owner })).headers.get('etag') ?? '';
    const erased = await server.ask('POST', `/api/jobs/${JOB}/forget-customer`, {
      cookie: owner,
      headers: { 'if-match': etag },
    });
    expect(erased.status).toBe(200);
    expect((await open(token)).status).toBe(404);
    const anew = await server.ask('POST', `${at}/links`, { cookie: owner, body: '{}' });
    expect(anew.status).toBe(409);
  });
});
