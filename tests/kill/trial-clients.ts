import { randomBytes } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import { ownLibrary } from '#tests/engine/own-library.ts';
import { newJob } from '../../ui/edits/new-job.ts';
import { tinyPng } from '../http/photos.ts';
import { etagFor, saltglass } from '../http/test-app.ts';
import { fingerprint, type Ledger, newLedger } from './ledger.ts';

/** Something that saves on and on until the server is gone. */
export interface TrialClient {
  readonly ledger: Ledger;
  /** Ends when the server does; rejects where it refuses what it should take. */
  readonly work: (url: string) => Promise<void>;
  /** The newest revision that is there, 0 for none. */
  readonly newest: (url: string) => Promise<number>;
  readonly read: (url: string, revision: number) => Promise<string | null>;
}

const JSON_TYPE = { 'content-type': 'application/json' };

/** Up to so many bytes of what the server keeps and nobody reads: saves of many sizes, some over many pages of the file. */
const padding = (mostBytes: number): string => ' '.repeat(Math.floor(Math.random() * mostBytes));

/** The answer, or null when the server went away before it had come whole. */
async function answered(
  address: string,
  how: RequestInit,
): Promise<{ readonly status: number; readonly body: string; readonly etag: string } | null> {
  try {
    const answer = await fetch(address, how);
    return {
      status: answer.status,
      body: await answer.text(),
      etag: answer.headers.get('etag') ?? '',
    };
  } catch {
    return null;
  }
}

async function fetched(address: string): Promise<Response | null> {
  const answer = await fetch(address);
  if (answer.status === 404) {
    await answer.arrayBuffer();
    return null;
  }
  if (answer.status !== 200) throw new Error(`${address} answers ${answer.status}: ${await answer.text()}`);
  return answer;
}

async function printOf(address: string): Promise<string | null> {
  const answer = await fetched(address);
  return answer === null ? null : fingerprint(new Uint8Array(await answer.arrayBuffer()));
}

async function revisionAt(address: string): Promise<number> {
  const answer = await fetched(address);
  if (answer === null) return 0;
  await answer.arrayBuffer();
  return Number(/^"(\d+)-/.exec(answer.headers.get('etag') ?? '')?.[1] ?? 0);
}

/** What a client saves next on what is there. */
interface SavedText {
  readonly name: string;
  readonly address: string;
  readonly text: () => string;
  /** The longest rest between two saves, ms: quotations are issued between two of the library. */
  readonly restMs?: number;
}

/** Saves texts at an address, each on the one before; whoever saves there as well is given way to. */
async function saveOn(
  url: string,
  ledger: Ledger,
  { name, address, text, restMs = 0 }: SavedText,
): Promise<void> {
  const place = `${url}${address.replace(/\?.*$/, '')}`;
  let etag = (await answered(place, {}))?.etag;
  while (etag !== undefined) {
    const body = text();
    ledger.sent.add(fingerprint(body));
    const answer = await answered(`${url}${address}`, {
      method: 'PUT',
      headers: { ...JSON_TYPE, 'if-match': etag },
      body,
    });
    if (answer === null) return;
    ledger.sent.delete(fingerprint(body));
    if (answer.status === 200) ledger.told.set(JSON.parse(answer.body).revision, fingerprint(body));
    else if (answer.status !== 412) throw new Error(`${name}: ${answer.status} ${answer.body}`);
    etag = answer.status === 200 ? answer.etag : JSON.parse(answer.body).currentEtag;
    if (restMs > 0) await pause(Math.random() * restMs);
  }
}

const { terms } = ownLibrary();

const emptyJob = newJob({ reference: 'T', title: 'Trial', terms: { labour: terms.labour, vat: terms.vat } });

/** Several clients that save one job. */
export function jobClient(id: string, how: 'by-hand' | 'autosave', hands = 1): TrialClient {
  const ledger = newLedger(`${id} (${how})`, how === 'autosave');
  const address = `/api/jobs/${id}`;
  let saves = 0;
  const text = (): string => {
    saves += 1;
    return `${JSON.stringify({ ...emptyJob, id, title: `Save ${saves}` })}${padding(60_000)}`;
  };
  const make = async (url: string): Promise<boolean> => {
    const body = text();
    ledger.sent.add(fingerprint(body));
    const made = await answered(`${url}/api/jobs`, { method: 'POST', headers: JSON_TYPE, body });
    if (made === null) return false;
    ledger.sent.delete(fingerprint(body));
    if (made.status === 201) ledger.told.set(1, fingerprint(body));
    return true;
  };
  return {
    ledger,
    work: async (url) => {
      if (ledger.told.size === 0 && !(await make(url))) return;
      const save = { name: ledger.name, address: `${address}?how=${how}`, text };
      await Promise.all(Array.from({ length: hands }, () => saveOn(url, ledger, save)));
    },
    newest: (url) => revisionAt(`${url}${address}`),
    read: (url, revision) => printOf(`${url}${address}/revisions/${revision}`),
  };
}

/** A client that saves the firm's library; of states before the newest the trial reads the file itself. */
export function libraryClient(): TrialClient {
  const ledger = newLedger('library', true);
  const own = ownLibrary();
  let saves = 0;
  const text = (): string => {
    saves += 1;
    return `${JSON.stringify({ ...own, firm: { ...own.firm, name: `Firm ${saves}` } })}${padding(4000)}`;
  };
  return {
    ledger,
    work: (url) => saveOn(url, ledger, { name: 'library', address: '/api/library', text, restMs: 800 }),
    newest: (url) => revisionAt(`${url}/api/library`),
    read: (url) => printOf(`${url}/api/library`),
  };
}

/** A client that sends photos; the n-th one sent is its revision n. */
export function photoClient(): TrialClient {
  const ledger = newLedger('photos');
  const ids: string[] = [];
  return {
    ledger,
    work: async (url) => {
      for (;;) {
        const body = Buffer.concat([tinyPng, randomBytes(1 + Math.floor(Math.random() * 200_000))]);
        const id = fingerprint(body);
        ledger.sent.add(id);
        const headers = { 'content-type': 'application/octet-stream' };
        const answer = await answered(`${url}/api/assets`, { method: 'POST', headers, body });
        if (answer === null) return;
        if (answer.status !== 201) throw new Error(`photos: ${answer.status} ${answer.body}`);
        ledger.sent.delete(id);
        ids.push(id);
        ledger.told.set(ids.length, id);
      }
    },
    newest: async (url) => {
      // One that was not answered is there whole, or not at all.
      for (const id of ledger.sent) if ((await printOf(`${url}/api/assets/${id}`)) === id) ids.push(id);
      return ids.length;
    },
    read: (url, revision) => printOf(`${url}/api/assets/${ids[revision - 1]}`),
  };
}

interface ListedQuotation {
  readonly id: string;
  readonly events: readonly { readonly seq: number; readonly note: { readonly kind: string } }[];
}

const quotingText = JSON.stringify({
  ...JSON.parse(saltglass),
  id: 'quoted',
  quoting: { schemes: ['spurs-rcbo'] },
});

const quotationsAt = async (url: string): Promise<readonly ListedQuotation[]> => {
  const answer = await fetched(`${url}/api/jobs/quoted/quotations`);
  return answer === null ? [] : (await answer.json()).quotations;
};

/** What is known of a quotation that was issued: its id, and that its first line says so. */
const issuedPrint = (id: string): string => fingerprint(`issued ${id}`);

/** A client that issues quotations of one job, each in the place of the one before; the n-th is its revision n. */
export function quotationClient(): TrialClient {
  const ledger = newLedger('quotations');
  const address = '/api/jobs/quoted';
  let tries = 0;
  return {
    ledger,
    work: async (url) => {
      const made = await answered(`${url}/api/jobs`, {
        method: 'POST',
        headers: JSON_TYPE,
        body: quotingText,
      });
      if (made === null) return;
      for (;;) {
        tries += 1;
        const id = `q${tries}`;
        const library = (await answered(`${url}/api/library`, {}))?.etag;
        // A server that stops may refuse one connection and go on with another that is open.
        if (library === undefined) return;
        ledger.sent.add(issuedPrint(id));
        const answer = await answered(`${url}${address}/quotations`, {
          method: 'POST',
          headers: { ...JSON_TYPE, 'if-match': etagFor(1, quotingText) },
          body: JSON.stringify({ id, date: '2026-11-27', library }),
        });
        if (answer === null) return;
        ledger.sent.delete(issuedPrint(id));
        if (answer.status === 201) ledger.told.set(JSON.parse(answer.body).revision, issuedPrint(id));
        // The library is saved by another client all the while, for the first time by now or not.
        else if (!['stale-library', 'not-ready'].includes(JSON.parse(answer.body).code))
          throw new Error(`quotations: ${answer.status} ${answer.body}`);
      }
    },
    newest: async (url) => (await quotationsAt(url)).length,
    read: async (url, revision) => {
      const one = (await quotationsAt(url))[revision - 1];
      if (one === undefined) return null;
      const whole =
        one.events[0]?.note.kind === 'issued' &&
        (await printOf(`${url}${address}/quotations/${one.id}/frozen/job`)) === fingerprint(quotingText);
      return whole ? issuedPrint(one.id) : `half there: ${JSON.stringify(one)}`;
    },
  };
}

/** The saves that are in flight when a server is killed: each kind of thing that it keeps. */
export const trialClients = (): readonly TrialClient[] => [
  jobClient('by-hand', 'by-hand'),
  jobClient('kept-by-itself', 'autosave'),
  jobClient('shared', 'by-hand', 3),
  libraryClient(),
  photoClient(),
  quotationClient(),
];
