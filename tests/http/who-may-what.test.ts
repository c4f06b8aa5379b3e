import { beforeAll, describe, expect, it } from 'vitest';
import { type Access, type RouteName, routeTable } from '../../api/http/route-table.ts';
import { tinyPng } from './photos.ts';
import { type Asking, cookieOf, issueAs, type SignedInApp, signedInApp } from './signed-in.ts';
import { saltglass, saltglassId, variantOf } from './test-app.ts';

/** Of the firm `own` alone. */
const JOB = 'only-ours';
const names = Object.keys(routeTable) as RouteName[];
type Who = 'nobody' | 'read-only' | 'estimator' | 'owner';

/** The access of each route as it is meant to be, written down apart from the table. */
const meant: Readonly<Record<Who, readonly Access[]>> = {
  nobody: ['anyone'],
  'read-only': ['anyone', 'read'],
  estimator: ['anyone', 'read', 'write'],
  owner: ['anyone', 'read', 'write', 'own'],
};

interface Ids {
  readonly id: string;
  readonly revision: string;
  readonly quotation: string;
  readonly variation: string;
  readonly text: string;
  readonly asset: string;
  readonly person: string;
  readonly invitation: string;
  readonly link: string;
}

const nobodys: Ids = {
  id: 'nobodys-job',
  revision: '1',
  quotation: 'nobodys-quotation',
  variation: 'nobodys-variation',
  text: 'document',
  asset: 'f'.repeat(64),
  person: 'nobody-at-all',
  invitation: 'nobodys-invitation',
  link: 'nobodys-link',
};

const filled = (path: string, ids: Ids): string =>
  path.replace(/\{(\w+)\}/g, (_, key: keyof Ids) => ids[key]);

/** What fits each body, so that an answer is about who asks and what there is, not about the body. */
const bodies = (ids: Ids): Partial<Record<RouteName, string | Uint8Array<ArrayBuffer>>> => ({
  createJob: variantOf(saltglass, { id: ids.id }),
  saveJob: variantOf(saltglass, { id: ids.id }),
  keepRevision: '{"keptFor":"named"}',
  estimatePosted: '{}',
  readingsPosted: '{}',
  saveLibrary: '{}',
  readSheets: new Uint8Array([1]),
  keepPhoto: new Uint8Array([1]),
  issueQuotation: '{"id":"q-new","date":"2026-11-25","library":"x"}',
  noteOnQuotation: '{"kind":"withdrawn","by":"A. Fitter","on":"2026-11-25"}',
  offerVariation: '{"id":"v-new","reason":"Found so.","photos":[],"job":"x","differencePence":0}',
  signIn: '{"email":"nobody@nowhere.example","password":"not this one"}',
  changePassword: '{"current":"not this one","password":"nor that one either"}',
  lookAtInvitation: '{"token":"x"}',
  useInvitation: '{"token":"x","password":"nor that one either","email":"a@b.example"}',
  invite: '{"name":"Somebody","role":"read-only"}',
  setRole: '{"role":"owner"}',
  makeLink: '{}',
  sharedQuotation: '{"token":"x"}',
  sharedQuotationPdf: '{"token":"x"}',
});

const asking = (name: RouteName, ids: Ids, cookie: string | undefined): Asking => {
  const body = bodies(ids)[name];
  return {
    ...(cookie === undefined ? {} : { cookie }),
    ...(body === undefined ? {} : { body }),
    headers: { 'if-match': '"1-0000000000000000"' },
  };
};

let server: SignedInApp;
const cookies: Partial<Record<Who | 'foreign', string>> = {};
let owns: Ids;

const call = (name: RouteName, ids: Ids, cookie: string | undefined): Promise<Response> => {
  const { method, path } = routeTable[name];
  return server.ask(method.toUpperCase(), filled(path, ids), asking(name, ids, cookie));
};

/** Everything that the firm `own` has, made by its owner. */
async function madeThings(cookie: string): Promise<Ids> {
  const post = async (path: string, body: string | Uint8Array<ArrayBuffer>) =>
    (await server.ask('POST', path, { cookie, body })).json();
  await issueAs(server, cookie, { jobId: JOB, quotationId: 'q-own' });
  const link = await post(`/api/jobs/${JOB}/quotations/q-own/links`, '{}');
  const photo = await post('/api/assets', tinyPng);
  const invitation = await post('/api/people/invitations', '{"name":"New","role":"estimator"}');
  return {
    ...nobodys,
    id: JOB,
    quotation: 'q-own',
    link: link.id,
    asset: photo.id,
    invitation: invitation.id,
    person: 'estimator-own-example',
  };
}

beforeAll(async () => {
  server = await signedInApp();
  cookies.owner = cookieOf(await server.signIn('owner@own.example'));
  for (const role of ['estimator', 'read-only'] as const)
    cookies[role] = await server.person({ email: `${role}@own.example`, role, firmId: 'own' });
  cookies.foreign = await server.person({ email: 'owner@other.example', role: 'owner', firmId: 'other' });
  owns = await madeThings(cookies.owner);
});

describe('who may what', () => {
  it.each(names)('%s is as the table says, for everybody', async (name) => {
    const access: Access = routeTable[name].access;
    for (const who of ['nobody', 'read-only', 'estimator', 'owner'] as const) {
      // Whoever signs out by this has no session for the next route.
      const cookie = name === 'signOut' ? undefined : cookies[who];
      const answer = await call(name, nobodys, cookie);
      const problem = answer.ok ? null : (await answer.clone().json()).code;
      const isRefused =
        problem === 'not-signed-in' || (problem === 'not-allowed' && name !== 'changePassword');
      const may = meant[name === 'signOut' ? 'nobody' : who].includes(access);
      expect([who, name, may ? 'let in' : 'refused', answer.status]).toEqual([
        who,
        name,
        isRefused ? 'refused' : 'let in',
        may ? answer.status : who === 'nobody' ? 401 : 403,
      ]);
    }
  });

  it.each(names.filter((name) => routeTable[name].path.includes('{')))(
    '%s answers the owner of another firm as if there were no such thing',
    async (name) => {
      const told = async (ids: Ids) => {
        const answer = await call(name, ids, cookies.foreign);
        // Each request has an id of its own.
        let text = (await answer.text()).replaceAll(answer.headers.get('x-request-id') ?? '-', '<request>');
        for (const [key, id] of Object.entries(ids))
          if (id.length > 3) text = text.replaceAll(id, `<${key}>`);
        return [answer.status, text, [...answer.headers.keys()].sort()];
      };
      const answer = await told(owns);
      expect(answer).toEqual(await told(nobodys));
      // Of no job there are no quotations: that is a list, and an empty one.
      const isEmpty = name === 'listQuotations' && answer[1] === '{"quotations":[]}';
      expect([name, isEmpty || Number(answer[0]) >= 400]).toEqual([name, true]);
    },
  );

  it('leaves everything of the firm as it was', async () => {
    const cookie = cookies.owner ?? '';
    const { people, invitations } = await (await server.ask('GET', '/api/people', { cookie })).json();
    expect(people.map(({ id, role }: { id: string; role: string }) => [id, role])).toEqual([
      ['estimator-own-example', 'estimator'],
      ['owner-own-example', 'owner'],
      ['read-only-own-example', 'read-only'],
    ]);
    expect(invitations.some(({ id }: { id: string }) => id === owns.invitation)).toBe(true);
    const at = `/api/jobs/${JOB}/quotations/q-own`;
    const { links } = await (await server.ask('GET', `${at}/links`, { cookie })).json();
    expect(links).toMatchObject([{ id: owns.link, withdrawnAt: null }]);
    expect((await server.ask('GET', `/api/assets/${owns.asset}`, { cookie })).status).toBe(200);
    expect((await (await server.ask('GET', at, { cookie })).json()).status).toBe('issued');
  });

  it('gives each firm its own demo jobs, and lets both name a job alike', async () => {
    const jobsOf = async (cookie = '') =>
      (await (await server.ask('GET', '/api/jobs', { cookie })).json()).jobs;
    expect((await jobsOf(cookies.foreign)).map(({ id }: { id: string }) => id)).toContain(saltglassId);
    const body = variantOf(saltglass, { id: 'named-alike', title: 'Theirs' });
    const first = await server.ask('POST', '/api/jobs', { cookie: cookies.foreign ?? '', body });
    const mine = variantOf(saltglass, { id: 'named-alike', title: 'Ours' });
    const second = await server.ask('POST', '/api/jobs', { cookie: cookies.owner ?? '', body: mine });
    expect([first.status, second.status]).toEqual([201, 201]);
    const read = await server.ask('GET', '/api/jobs/named-alike', { cookie: cookies.owner ?? '' });
    expect((await read.json()).title).toBe('Ours');
  });

  it('refuses a screen that takes itself to be of another firm', async () => {
    const headers = { 'ringwright-firm': 'other' };
    const cookie = cookies.owner ?? '';
    expect((await server.ask('GET', '/api/jobs', { cookie, headers })).status).toBe(401);
    const own = { 'ringwright-firm': 'own' };
    expect((await server.ask('GET', '/api/jobs', { cookie, headers: own })).status).toBe(200);
  });
});
