import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { type RouteName, routeTable } from '../../api/http/route-table.ts';
import { newJob } from '../../ui/edits/new-job.ts';
import { etagFor, saltglass, saltglassId, testApp } from './test-app.ts';

const names = Object.keys(routeTable) as RouteName[];

/** A job without a scheme, as every job begins: nothing is laid out of it, and half of the papers are not to be had. */
const emptyJob = JSON.stringify(
  newJob({
    reference: 'F',
    title: 'Fuzz',
    terms: { labour: demoLibrary().terms.labour, vat: demoLibrary().terms.vat },
  }),
);
const emptyId: string = JSON.parse(emptyJob).id;

/** A part of an address: mostly what is there, else anything that an address can hold. */
const idPart = fc.oneof(
  { weight: 1, arbitrary: fc.constant(saltglassId) },
  { weight: 2, arbitrary: fc.constant(emptyId) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 20 }).map((text) => escaped(text)) },
  { weight: 1, arbitrary: fc.constantFrom('%', '%ff', '%zz', '%2f', '%00', '..', '.', 'é', '__proto__') },
);
const revisionPart = fc.constantFrom('1', '2', '0', '-1', '1e9', '999999999999999999', 'x', '%31');

/** Percent-encoded, with lone surrogates as the replacement that an encoder would refuse to write. */
function escaped(text: string): string {
  return encodeURIComponent(text.replace(/\p{Cs}/gu, '?')) || 'x';
}

const headerValue = fc.oneof(
  fc.constantFrom(
    '"1"',
    '"0"',
    'W/"1"',
    etagFor(1, saltglass),
    `W/${etagFor(1, saltglass)}`,
    '"1-"',
    '*',
    '""',
    '"999999999999999"',
    '"9999999999999999"',
    'null',
    'same-origin',
    'cross-site',
    'http://localhost',
    'application/json',
    'application/json; charset=utf-8',
    'text/html',
    'bytes=0-1',
    'br;q=1, gzip',
  ),
  fc.string({ maxLength: 30 }).filter((text) => /^[\x20-\x7e]*$/.test(text)),
);
const headers = fc.dictionary(
  fc.constantFrom(
    'if-match',
    'if-none-match',
    'origin',
    'sec-fetch-site',
    'content-type',
    'accept',
    'accept-encoding',
    'range',
    'host',
    'x-forwarded-host',
  ),
  headerValue,
  { maxKeys: 4 },
);

const keysOfJob = Object.keys(JSON.parse(saltglass));

/** The demo job with some of its keys made into something else, or anything at all, or no JSON. */
const body = fc.oneof(
  fc
    .dictionary(fc.oneof(fc.constantFrom(...keysOfJob), fc.string()), fc.jsonValue({ maxDepth: 4 }), {
      maxKeys: 3,
    })
    .map((changes) => JSON.stringify({ ...JSON.parse(saltglass), ...changes })),
  fc
    .dictionary(
      fc.constantFrom('job', 'library', 'date', 'revision', 'keptFor', 'id', 'kind', 'reason', 'x'),
      fc.jsonValue(),
      {
        maxKeys: 4,
      },
    )
    .map((group) => JSON.stringify(group)),
  fc.json(),
  fc.constant(saltglass),
  fc.string({ unit: 'binary' }),
  fc.uint8Array({ maxLength: 200 }),
);

const query = fc.dictionary(
  fc.constantFrom('how', 'date', 'scheme', 'storey', 'x'),
  fc.oneof(
    fc.constantFrom('autosave', 'by-hand', '', '2026-11-25', 'two-on-one'),
    fc.string({ maxLength: 10 }),
  ),
  { maxKeys: 3 },
);

/** An app with both jobs in it, for what changes something. */
async function appWithJobs() {
  const made = await testApp();
  for (const text of [saltglass, emptyJob]) await made.send('POST', '/api/jobs', text);
  return made;
}

const asJson = { 'content-type': 'application/json', 'if-match': etagFor(1, saltglass) };

describe.each(names)('the route %s', (name) => {
  it('answers anything at all with an answer of its own or a problem, and never breaks', async () => {
    const { method, path } = routeTable[name];
    // What only reads leaves an app as it was: one serves all of its cases.
    const shared = method === 'get' ? await appWithJobs() : null;
    await fc.assert(
      fc.asyncProperty(
        idPart,
        revisionPart,
        headers,
        query,
        body,
        fc.boolean(),
        async (id, revision, more, asked, sent, plain) => {
          const made = shared ?? (await appWithJobs());
          const address = path
            .replace('{id}', () => id)
            .replace('{revision}', () => revision)
            .replace(/\{(?:quotation|variation|asset|text)\}/g, () => id);
          const answer = await made.app.request(`${address}?${new URLSearchParams(asked)}`, {
            method: method.toUpperCase(),
            headers: plain ? asJson : { ...asJson, ...more },
            ...(method === 'get' ? {} : { body: typeof sent === 'string' ? sent : new Uint8Array(sent) }),
          });
          expect(made.complaints).toEqual([]);
          expect(answer.status).toBeLessThan(500);
          const text = await answer.text();
          if (answer.status < 400) return;
          expect(answer.headers.get('content-type')).toBe('application/problem+json');
          const problem = JSON.parse(text);
          expect(problem.status).toBe(answer.status);
          expect(problem.type).toBe(`/api/problems#${problem.code}`);
        },
      ),
      { numRuns: 30 },
    );
    // A route that answers with a PDF takes half a second each time.
  }, 120_000);
});
