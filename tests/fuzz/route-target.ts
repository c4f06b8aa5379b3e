import { type RouteName, routeTable } from '../../api/http/route-table.ts';
import { tinyPng } from '../http/photos.ts';
import { etagFor, testApp } from '../http/test-app.ts';
import type { Chance } from './chance.ts';
import { mutatedBytes } from './mutate-bytes.ts';
import { mutatedText, oddTexts, oddValue } from './mutate-json.ts';
import type { FuzzTarget } from './targets.ts';

const names = Object.keys(routeTable) as RouteName[];

/** Routes that lay out pages or archives, a second of work each where the job is there: one case in so many asks for them in earnest. */
const isLaidOut = (path: string): boolean => /\.(?:pdf|zip|xlsx)$/.test(path);
const EARNEST = 0.02;
/** What works a whole house out, or lays its pages out, is that house's work however it is asked for: seconds on a busy machine. */
const WORKED_MS = 15_000;
const isWorked = (path: string): boolean =>
  isLaidOut(path) || /\/exports\/|\/estimate$|\/quotations/.test(path);

/** An app serves so many cases, then one with an empty store takes its place. */
const CASES_AN_APP = 400;

const encoded = (text: string): string => encodeURIComponent(text.replace(/\p{Cs}/gu, '?')) || 'x';

const rawParts = ['%', '%ff', '%zz', '%2f', '%00', '..', '.', 'é', '__proto__', 'constructor', '%e2%80%ae'];

function idPart(chance: Chance, known: readonly string[], earnest: number): string {
  if (chance.isSo(earnest)) return chance.one(known);
  return chance.isSo(0.5) ? chance.one(rawParts) : encoded(chance.one(oddTexts));
}

const headerNames = [
  'if-match',
  'if-none-match',
  'origin',
  'sec-fetch-site',
  'content-type',
  'accept',
  'range',
  'host',
  'x-request-id',
  'cookie',
  'authorization',
  'content-length',
];
const headerValues = [
  '"1"',
  'W/"1"',
  '"0"',
  '*',
  '""',
  '"999999999999999-x"',
  'null',
  'same-origin',
  'cross-site',
  'http://localhost',
  'text/html',
  'application/json',
  'application/json; charset=utf-8',
  'application/octet-stream',
  'bytes=0-1',
  'x'.repeat(9000),
  '=1+1',
  '{}',
];

function headersOf(chance: Chance, name: RouteName, etags: readonly string[]): Record<string, string> {
  const entry = routeTable[name];
  const bytes = 'body' in entry && entry.body.kind === 'bytes';
  const headers: Record<string, string> = {
    'content-type': bytes ? 'application/octet-stream' : 'application/json',
    'if-match': chance.one(etags),
  };
  for (let left = chance.below(3); left > 0; left -= 1)
    headers[chance.one(headerNames)] = chance.one(headerValues);
  return headers;
}

interface Bases {
  readonly bodies: readonly string[];
  readonly libraryText: string;
}

const smallKeys = [
  'id',
  'date',
  'library',
  'kind',
  'keptFor',
  'reason',
  'photos',
  'job',
  'differencePence',
  'by',
  'how',
  'on',
  'x',
];

function bodyOf(chance: Chance, name: RouteName, { bodies, libraryText }: Bases): string | Uint8Array {
  const entry = routeTable[name];
  if ('body' in entry && entry.body.kind === 'bytes') return mutatedBytes(chance, tinyPng);
  const takesJob = 'body' in entry && entry.body.limitBytes > 1_000_000;
  if (chance.isSo(0.1)) return mutatedBytes(chance, new TextEncoder().encode(chance.one(oddTexts)));
  if (takesJob && chance.isSo(0.9)) {
    if (name === 'saveLibrary') return mutatedText(chance, libraryText);
    return mutatedText(chance, chance.isSo(0.9) ? (bodies[0] ?? '') : chance.one(bodies));
  }
  const pairs = Array.from({ length: chance.below(5) }, () => [chance.one(smallKeys), oddValue(chance)]);
  return JSON.stringify(Object.fromEntries(pairs));
}

const queries = [
  '',
  '?how=autosave',
  '?how=x',
  '?date=2026-11-27',
  '?date=9999-99-99',
  '?scheme=__proto__',
  '?storey=%ff',
  '?sheet=A3',
  '?removed=true',
  '?date=&scheme=',
];

interface AtWork {
  readonly app: Awaited<ReturnType<typeof testApp>>;
  readonly ids: readonly string[];
  readonly etags: readonly string[];
}

async function atWork({ bodies }: Bases): Promise<AtWork> {
  const app = await testApp();
  for (const text of bodies) await app.send('POST', '/api/jobs', text);
  const ids: string[] = bodies.map((text) => JSON.parse(text).id);
  const library = (await app.get('/api/library')).headers.get('etag') ?? '';
  return { app, ids, etags: [...bodies.map((text) => etagFor(1, text)), library, '"1"'] };
}

/** What is wrong with an answer: nothing may break, and every refusal is a problem in the one shape. */
async function breachOf(
  answer: Response,
  isHead: boolean,
  complaints: readonly { readonly line: string; readonly error: unknown }[],
): Promise<string | null> {
  const text = await answer.text();
  if (complaints.length > 0)
    return `complained: ${complaints[0]?.line} ${String((complaints[0]?.error as Error)?.stack)}`;
  if (answer.status >= 500) return `answered ${answer.status}: ${text.slice(0, 300)}`;
  if (answer.status < 400) return null;
  const isProblem = answer.headers.get('content-type') === 'application/problem+json';
  if (!isProblem) return `refused with ${answer.status} as ${answer.headers.get('content-type')}`;
  // An answer to HEAD has the headers alone.
  if (text === '' && isHead) return null;
  const { code, type, status } = JSON.parse(text);
  return type === `/api/problems#${code}` && status === answer.status
    ? null
    : `a problem that is none: ${text.slice(0, 200)}`;
}

interface OddRequest {
  readonly route: RouteName;
  readonly address: string;
  readonly init: RequestInit;
}

function addressOf(chance: Chance, path: string, ids: readonly string[]): string {
  const earnest = isLaidOut(path) ? EARNEST : 0.7;
  const parts = path.replace(/\{(\w+)\}/g, (_, part) => {
    if (part === 'revision') return chance.one(['1', '2', '0', '-1', '1e9', '%31', 'x']);
    return part === 'id' ? idPart(chance, ids, earnest) : idPart(chance, ['q1', 'a'.repeat(64), 'job'], 0.5);
  });
  return `${parts}${chance.one(queries)}`;
}

function oddRequest(chance: Chance, { ids, etags }: AtWork, bases: Bases): OddRequest {
  const route = chance.one(names);
  const { method: own, path } = routeTable[route];
  const method = chance.isSo(0.03) ? chance.one(['PATCH', 'HEAD', 'OPTIONS', 'DELETE']) : own.toUpperCase();
  const body = method === 'GET' || method === 'HEAD' ? null : bodyOf(chance, route, bases);
  const sent = body === null ? {} : { body: typeof body === 'string' ? body : new Uint8Array(body) };
  return {
    route,
    address: addressOf(chance, path, ids),
    init: { method, headers: headersOf(chance, route, etags), ...sent },
  };
}

/** Every route of the server with odd addresses, headers and bodies. */
export function routeTarget({
  name,
  share,
  ...bases
}: Pick<FuzzTarget, 'name' | 'share'> & Bases): FuzzTarget {
  let work: AtWork | null = null;
  let cases = 0;
  return {
    name,
    share,
    make: async (chance) => {
      if (work === null || cases % CASES_AN_APP === 0) work = await atWork(bases);
      cases += 1;
      const { app } = work;
      const { route, address, init } = oddRequest(chance, work, bases);
      app.complaints.length = 0;
      const asked = async (): Promise<string | null> => {
        const answer = await app.app.request(address, init);
        const breach = await breachOf(answer, init.method === 'HEAD', app.complaints);
        return breach === null ? null : `${route}: ${breach}`;
      };
      return isWorked(routeTable[route].path) ? Object.assign(asked, { mostMs: WORKED_MS }) : asked;
    },
  };
}
