import { isIP } from 'node:net';
import type { Context, MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { type AppEnv, accessGuard } from './access-guard.ts';
import { Problem } from './problems.ts';
import { type RouteName, routeTable } from './route-table.ts';

/** How a server may be addressed. */
export interface Reach {
  /** Names that this machine goes by, in lower case, beside `localhost` and any IP address. */
  readonly hostNames: readonly string[];
  /** The origin that browsers see when a proxy stands before the server. */
  readonly publicOrigin: string | null;
  /** True when the server itself speaks TLS. */
  readonly tls: unknown;
}

const SAFE_METHODS = new Set(['GET', 'HEAD', 'OPTIONS']);

/** The host as the client wrote it; requests made in memory have it in their address alone. */
const hostOf = (c: Context): string => (c.req.header('host') ?? new URL(c.req.url).host).toLowerCase();

/** Without port and brackets. */
const nameOf = (host: string): string =>
  host
    .replace(/:\d*$/, '')
    .replace(/^\[(.*)\]$/, '$1')
    .replace(/\.$/, '');

/**
 * Refuses requests for a name that is not this server's. A page of another site can point its own name at this
 * machine's address and would then count as same-origin to the browser; an IP address cannot be pointed.
 */
export function hostGuard({ hostNames, publicOrigin }: Reach): MiddlewareHandler {
  const names = new Set(['localhost', ...hostNames]);
  if (publicOrigin !== null) names.add(new URL(publicOrigin).hostname);
  return async (c, next) => {
    const name = nameOf(hostOf(c));
    if (!names.has(name) && isIP(name) === 0)
      throw new Problem(
        'wrong-host',
        'Use the address that the server printed at its start, or name this one in PUBLIC_URL.',
      );
    await next();
  };
}

/**
 * Refuses unsafe methods that a browser sends on behalf of another site. Programs that are no browsers send neither
 * header and pass.
 */
export function originGuard({ publicOrigin, tls }: Reach): MiddlewareHandler {
  const scheme = tls ? 'https' : 'http';
  return async (c, next) => {
    if (SAFE_METHODS.has(c.req.method)) return next();
    const origin = c.req.header('origin');
    const site = c.req.header('sec-fetch-site');
    const own = origin === undefined || origin === `${scheme}://${hostOf(c)}` || origin === publicOrigin;
    const sent = site === undefined || site === 'same-origin' || site === 'none';
    if (!own || !sent)
      throw new Problem('foreign-origin', 'Only pages of this server may change what it keeps.');
    return next();
  };
}

type BodyKind = 'json' | 'bytes' | 'none';

const JSON_TYPE = /^application\/json\s*(?:;\s*charset="?utf-8"?\s*)?$/i;
const BYTES_TYPE = /^application\/octet-stream\s*$/i;

const typeWords: Readonly<Record<BodyKind, string>> = {
  json: 'Send the body as UTF-8 with "Content-Type: application/json".',
  bytes: 'Send the file’s bytes with "Content-Type: application/octet-stream", whatever kind of file it is.',
  none: 'No body belongs here; leave out the content type, or send application/json.',
};

function typeGuard(kind: BodyKind): MiddlewareHandler<AppEnv> {
  return async (c, next) => {
    const type = c.req.header('content-type');
    const fitting = kind === 'bytes' ? BYTES_TYPE : JSON_TYPE;
    const wrong = type === undefined ? kind !== 'none' : !fitting.test(type);
    if (wrong) throw new Problem('wrong-content-type', typeWords[kind]);
    await next();
  };
}

function sizeGuard(limitBytes: number): MiddlewareHandler<AppEnv> {
  return bodyLimit({
    maxSize: limitBytes,
    onError: () => {
      throw new Problem('body-too-large', `At most ${limitBytes} bytes are taken here.`, { limitBytes });
    },
  });
}

/** The guards of a route, by its entry in the table: who asks; with an unsafe method content type, then size. */
function guardsOf(name: RouteName): MiddlewareHandler<AppEnv>[] {
  const entry = routeTable[name];
  const body = 'body' in entry ? [typeGuard(entry.body.kind), sizeGuard(entry.body.limitBytes)] : [];
  return [accessGuard(entry.access), ...body];
}

/** What the document says that a request has to carry. */
type SecurityNeed = Record<string, string[]>;

/** Nothing, or the session's cookie with the right that it has to give. */
const securityOf = (name: RouteName): SecurityNeed[] => {
  const { access } = routeTable[name];
  return access === 'anyone' ? [] : [{ session: [access] }];
};

/** Method, path and guards of a route, for its registration. */
export function routeAt<Name extends RouteName>(
  name: Name,
): Pick<(typeof routeTable)[Name], 'method' | 'path'> & {
  readonly operationId: Name;
  readonly middleware: MiddlewareHandler<AppEnv>[];
  readonly security: SecurityNeed[];
} {
  const { method, path } = routeTable[name];
  return { method, path, operationId: name, middleware: guardsOf(name), security: securityOf(name) };
}
