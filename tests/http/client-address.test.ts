import { Hono } from 'hono';
import { describe, expect, it } from 'vitest';
import { clientAddress } from '../../api/http/sign-in/client-address.ts';

async function from(
  remoteAddress: string,
  publicOrigin: string | null = null,
  forwarded?: string,
): Promise<string> {
  const app = new Hono();
  app.get('/', (c) => c.text(clientAddress(c, { publicOrigin })));
  const headers: Record<string, string> = forwarded === undefined ? {} : { 'x-forwarded-for': forwarded };
  return (await app.request('/', { headers }, { incoming: { socket: { remoteAddress } } })).text();
}

describe('where a request comes from', () => {
  it('is the connection’s other end, an IPv6 network as one', async () => {
    expect(await from('192.0.2.7')).toBe('192.0.2.7');
    expect(await from('::ffff:192.0.2.7')).toBe('192.0.2.7');
    // Source: RFC 4291, 2.5.4: the first 64 bits are the network.
    expect(await from('2001:db8:0:12::1')).toBe('2001:db8:0:12');
    expect(await from('2001:db8:0:12:ffff:1:2:3')).toBe('2001:db8:0:12');
    expect(await from('2001:db8:0:13::1')).toBe('2001:db8:0:13');
    expect(await from('fe80::1%eth0')).toBe('fe80:0:0:0');
    expect(await from('::1')).toBe('0:0:0:0');
  });

  it('is what the proxy added where there is one, and nobody’s word where there is none', async () => {
    expect(await from('127.0.0.1', 'https://jobs.example', '198.51.100.1, 192.0.2.9')).toBe('192.0.2.9');
    expect(await from('127.0.0.1', 'https://jobs.example')).toBe('127.0.0.1');
    expect(await from('192.0.2.7', null, '198.51.100.1')).toBe('192.0.2.7');
  });
});
