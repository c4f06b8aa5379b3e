import type { Context } from 'hono';
import { deleteCookie, getCookie, setCookie } from 'hono/cookie';
import { SESSION_MOST_MS } from './life-spans.ts';
import { isToken } from './tokens.ts';

/** Whether the cookie goes over TLS alone. */
export interface CookieSettings {
  readonly secureCookies: boolean;
}

/** A browser keeps a name with this prefix to one host, all of it, over TLS. Source: RFC 6265bis, 4.1.3. */
const nameOf = ({ secureCookies }: CookieSettings): string =>
  secureCookies ? '__Host-ringwright' : 'ringwright';

const attributes = ({ secureCookies }: CookieSettings) =>
  ({ path: '/', httpOnly: true, sameSite: 'Strict', secure: secureCookies }) as const;

/** The session's token that a request carries; null where it carries none. */
export function tokenIn(c: Context, settings: CookieSettings): string | null {
  const token = getCookie(c, nameOf(settings)) ?? '';
  return isToken(token) ? token : null;
}

/** Has the browser carry a session's token; the server ends it, whatever the browser keeps. */
export function carryToken(c: Context, settings: CookieSettings, token: string): void {
  setCookie(c, nameOf(settings), token, { ...attributes(settings), maxAge: SESSION_MOST_MS / 1000 });
}

/** Has the browser forget it. */
export function dropToken(c: Context, settings: CookieSettings): void {
  deleteCookie(c, nameOf(settings), attributes(settings));
}
