import { isIPv6 } from 'node:net';
import type { Context } from 'hono';

/** What the node adapter lays beside a request; requests made in memory have none. */
interface Incoming {
  readonly incoming?: { readonly socket?: { readonly remoteAddress?: string } };
}

/** An IPv6 address by its network: whoever has one has 2^64 of them. */
function networkOf(address: string): string {
  const plain = address.replace(/^::ffff:(?=\d+\.)/, '').replace(/%.*$/, '');
  if (!isIPv6(plain)) return plain;
  const [head = '', tail] = plain.toLowerCase().split('::');
  const groups = (part: string | undefined): readonly string[] =>
    part === undefined || part === '' ? [] : part.split(':');
  const missing = Math.max(0, 8 - groups(head).length - groups(tail).length);
  const zeros = tail === undefined ? [] : Array.from({ length: missing }, () => '0');
  return [...groups(head), ...zeros, ...groups(tail)]
    .slice(0, 4)
    .map((one) => Number.parseInt(one, 16).toString(16))
    .join(':');
}

/**
 * Where a request comes from, for counting guesses. Behind a proxy, which PUBLIC_URL says, it is the last address that
 * X-Forwarded-For names: the one that the proxy itself added; without a proxy the header is anybody's word.
 */
export function clientAddress(
  c: Context,
  { publicOrigin }: { readonly publicOrigin: string | null },
): string {
  const forwarded = publicOrigin === null ? undefined : c.req.header('x-forwarded-for');
  const named = forwarded?.split(',').at(-1)?.trim();
  const socket = (c.env as Incoming | undefined)?.incoming?.socket?.remoteAddress;
  return networkOf(named || socket || 'unknown');
}
