import { readFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { serve } from '@hono/node-server';
import { Hono } from 'hono';

// The bare framework: one route that sends the bytes of a file, and nothing else.
const [path] = process.argv.slice(2);
const text = readFileSync(path ?? '', 'utf8');
const app = new Hono().get('/job', (c) => c.body(text, 200, { 'Content-Type': 'application/json' }));
serve({ fetch: app.fetch, hostname: '127.0.0.1', port: 0 }, ({ port }: AddressInfo) =>
  process.stdout.write(`http://127.0.0.1:${port}\n`),
);
