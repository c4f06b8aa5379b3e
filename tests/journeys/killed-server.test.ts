import { setTimeout as pause } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../scripts/product/running-server.ts';

const path = (id: string): string => `/api/jobs/${id}`;

interface Stored {
  readonly job: Record<string, unknown>;
  /** As the server told it. */
  readonly etag: string;
}

const etagOf = (answer: Response): string => answer.headers.get('etag') ?? '';

const revisionOf = ({ etag }: Stored): number => Number(/^"(\d+)-/.exec(etag)?.[1]);

async function readAt(server: RunningServer, address: string): Promise<Stored> {
  const answer = await fetch(new URL(address, server.address));
  expect([address, answer.status]).toEqual([address, 200]);
  return { job: (await answer.json()) as Record<string, unknown>, etag: etagOf(answer) };
}

const read = (server: RunningServer, id: string): Promise<Stored> => readAt(server, path(id));

const put = (server: RunningServer, id: string, { job, etag }: Stored): Promise<Response> =>
  fetch(new URL(`${path(id)}?how=autosave`, server.address), {
    method: 'PUT',
    headers: { 'content-type': 'application/json', 'if-match': etag },
    body: JSON.stringify(job),
  });

async function firstJob(server: RunningServer): Promise<string> {
  const { jobs } = (await (await fetch(new URL('/api/jobs', server.address))).json()) as {
    jobs: { id: string }[];
  };
  return jobs[0]?.id ?? '';
}

describe('the server', () => {
  it('takes fifty saves at once: one of each base, and none is refused that is not stale', async () => {
    const server = await startServer();
    try {
      const id = await firstJob(server);
      const stored = await read(server, id);
      const all = Array.from({ length: 50 }, (_, i) => ({
        job: { ...stored.job, title: `by ${i}` },
        etag: stored.etag,
      }));
      const statuses = await Promise.all(all.map(async (one) => (await put(server, id, one)).status));
      expect(statuses.filter((status) => status === 200)).toHaveLength(1);
      expect(statuses.filter((status) => status === 412)).toHaveLength(49);
      const winner = statuses.indexOf(200);
      expect((await read(server, id)).job.title).toBe(`by ${winner}`);
    } finally {
      await server.close();
    }
  });

  it('killed while it saves has every save that it had acknowledged', async () => {
    let server = await startServer();
    try {
      const id = await firstJob(server);
      for (const ms of [40, 15, 150]) {
        let acknowledged = await read(server, id);
        const before = revisionOf(acknowledged);
        let killing: Promise<void> | null = null;
        for (let i = 0; ; i++) {
          const job = { ...acknowledged.job, title: `save ${ms}.${i}` };
          const answer = await put(server, id, { job, etag: acknowledged.etag }).catch(() => null);
          // Refused it must not be: it may only go unanswered.
          expect(answer?.status ?? 200).toBe(200);
          if (answer === null) break;
          acknowledged = { job, etag: etagOf(answer) };
          // From the first acknowledgement on: so there is one in every round, however slow the machine is.
          const { kill } = server;
          killing ??= pause(ms).then(kill);
        }
        await killing;
        expect(revisionOf(acknowledged)).toBeGreaterThan(before);
        server = await server.again();
        expect(await readAt(server, `${path(id)}/revisions/${revisionOf(acknowledged)}`)).toEqual(
          acknowledged,
        );
        // At most the save that was under way has come after it.
        const since = revisionOf(await read(server, id)) - revisionOf(acknowledged);
        expect([0, 1]).toContain(since);
      }
    } finally {
      await server.close();
    }
  }, 90_000);
});
