import { type LoadResult, loaded, startJobReadServers } from './job-read-servers.ts';

const TURNS = 2;

const said = (name: string, { requestsPerSecond, p99Ms, errors }: LoadResult): string =>
  `${name.padEnd(24)}${requestsPerSecond.toFixed(0).padStart(8)} requests a second, p99 ${p99Ms} ms, ${errors} errors`;

/** Reads a stored job over loopback for so many seconds, beside the bare framework in turns; 1 where an answer is missing. */
export async function runLoad(seconds: number): Promise<number> {
  const servers = await startJobReadServers();
  let errors = 0;
  try {
    for (let turn = 0; turn < TURNS; turn += 1)
      for (const [name, url] of [
        ['a stored job', servers.urls.product],
        ['bare Hono, same bytes', servers.urls.bare],
      ] as const) {
        const result = await loaded(url, seconds);
        errors += result.errors;
        process.stdout.write(`${said(name, result)}\n`);
      }
  } finally {
    await servers.close();
  }
  return errors === 0 ? 0 : 1;
}
