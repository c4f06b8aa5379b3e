import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import autocannon from 'autocannon';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { startServer } from '../product/running-server.ts';

/** What a stretch of load came to. */
export interface LoadResult {
  readonly requestsPerSecond: number;
  readonly p99Ms: number;
  /** Answers that were none, came too late or were anything but the job. */
  readonly errors: number;
}

/** The product with a stored job, and the bare framework that sends the same bytes, each in a process of its own. */
export interface JobReadServers {
  readonly urls: { readonly product: string; readonly bare: string };
  readonly close: () => Promise<void>;
}

const CONNECTIONS = 20;

async function startBare(
  textPath: string,
): Promise<{ readonly child: ChildProcess; readonly address: string }> {
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', join('scripts', 'bench', 'bare-server.ts'), textPath],
    {
      stdio: ['ignore', 'pipe', 'inherit'],
    },
  );
  const [said] = (await once(child.stdout as NodeJS.ReadableStream, 'data')) as [Buffer];
  return { child, address: said.toString().trim() };
}

/** Starts both; what they send is held to be the same before anything is measured. */
export async function startJobReadServers(): Promise<JobReadServers> {
  const folder = await mkdtemp(join(tmpdir(), 'ringwright-'));
  const product = await startServer();
  const url = `${product.address}/api/jobs/${demoJob('saltglass-row').id}`;
  const text = await (await fetch(url)).text();
  const path = join(folder, 'job.json');
  await writeFile(path, text);
  const { child, address } = await startBare(path);
  const close = async (): Promise<void> => {
    const gone = once(child, 'exit');
    child.kill();
    await Promise.all([gone, product.close(), rm(folder, { recursive: true, force: true })]);
  };
  const bare = `${address}/job`;
  const same = await (await fetch(bare)).text();
  if (same !== text || !text.startsWith('{')) {
    await close();
    throw new Error('the two servers do not send the same job');
  }
  return { urls: { product: url, bare }, close };
}

/** Asks a server for so many seconds, as fast as it answers. */
export async function loaded(url: string, seconds: number): Promise<LoadResult> {
  const result = await autocannon({ url, connections: CONNECTIONS, duration: seconds });
  const { requests, latency, errors, timeouts, non2xx, duration } = result;
  return {
    requestsPerSecond: requests.total / duration,
    p99Ms: latency.p99,
    errors: errors + timeouts + non2xx,
  };
}
