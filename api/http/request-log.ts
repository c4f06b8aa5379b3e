import { randomUUID } from 'node:crypto';
import type { IncomingMessage, ServerResponse } from 'node:http';
import type { Context, MiddlewareHandler } from 'hono';
import type { Log } from './log.ts';
import { routeEntryAt } from './route-table.ts';

/** What a request is called by in the log and in its answer. */
export const REQUEST_ID = 'X-Request-Id';

/** Which version answered. */
export const VERSION_HEADER = 'Ringwright-Version';

/** What is known of a request beside what the connection tells. */
interface RequestEntry {
  readonly requestId: string;
  /** The pattern of its route: an address itself names jobs and people's quotations. */
  readonly route: string;
  /** Whose data it is about; null: nobody's. */
  firm: string | null;
}

/** One request as it is logged. */
export interface RequestLine extends RequestEntry {
  readonly level: 'info' | 'warn' | 'error';
  readonly method: string;
  readonly status: number;
  /** From its first line to the last byte of the answer. */
  readonly ms: number;
  /** Of the answer, headers and all, as they went over the wire. */
  readonly bytes: number;
  /** True: the client went away before the answer had gone whole. */
  readonly brokenOff: boolean;
}

const entries = new WeakMap<object, RequestEntry>();

/** What requests are known by: the connection's own message, or the request alone where there is no connection. */
function keyOf(c: Context): object {
  const { env } = c;
  const hasMessage = typeof env === 'object' && env !== null && 'incoming' in env;
  return hasMessage && typeof env.incoming === 'object' && env.incoming !== null ? env.incoming : c.req.raw;
}

/** Letters, figures and a few marks: what a log may repeat from anybody. */
const WELL_FORMED = /^[A-Za-z0-9._-]{1,64}$/;

function newEntry(c: Context): RequestEntry {
  const given = c.req.header(REQUEST_ID);
  const entry = routeEntryAt(c.req.method, c.req.path);
  const elsewhere = c.req.path.startsWith('/api/') ? '(none)' : '(screen)';
  return {
    requestId: given !== undefined && WELL_FORMED.test(given) ? given : randomUUID(),
    route: entry?.path ?? elsewhere,
    firm: null,
  };
}

/** What is known of a request under way. */
export function requestEntryOf(c: Context): RequestEntry {
  // By its context too: who bounds a body puts another request in the place of the first.
  const known = entries.get(c) ?? entries.get(keyOf(c));
  if (known !== undefined) return known;
  const entry = newEntry(c);
  entries.set(c, entry);
  entries.set(keyOf(c), entry);
  return entry;
}

/** Gives every request an id, or takes the one that it brings, and sends it back with the version that answers. */
export function nameRequests(version: string): MiddlewareHandler {
  return async (c, next) => {
    const { requestId } = requestEntryOf(c);
    await next();
    // On the answer itself: `c.header` would make a new one of it, its body a stream.
    c.res.headers.set(REQUEST_ID, requestId);
    c.res.headers.set(VERSION_HEADER, version);
  };
}

const levelOf = (status: number, brokenOff: boolean): RequestLine['level'] =>
  status >= 500 ? 'error' : status >= 400 || brokenOff ? 'warn' : 'info';

/** Logs a request once its answer has gone, or once the client has. */
export function logWhenAnswered(log: Log, request: IncomingMessage, response: ServerResponse): void {
  const began = performance.now();
  const before = request.socket.bytesWritten;
  response.once('close', () => {
    const brokenOff = !response.writableFinished;
    const entry = entries.get(request) ?? { requestId: randomUUID(), route: '(none)', firm: null };
    log.request({
      level: levelOf(response.statusCode, brokenOff),
      ...entry,
      method: request.method ?? '',
      status: response.statusCode,
      ms: Math.round((performance.now() - began) * 10) / 10,
      bytes: request.socket.bytesWritten - before,
      brokenOff,
    });
  });
}
