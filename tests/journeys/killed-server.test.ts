import { describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../scripts/product/running-server.ts';

const path = (id: string): string => `/api/jobs/${id}`;

interface Stored {
  readonly job: Record<string, unknown>;
  readonly revision: number;
}

async function read(server: RunningServer, id: string): Promise<Stored> {
  const answer = await fetch(new URL(path(id), server.address));
  const revision = Number(answer.headers.get('etag')?.replaceAll('"', ''));
  return { job: (await answer.json()) as Record<string, unknown>, revision };
}

const put = (server: RunningServer, id: string, { job, revision }: Stored): Promise<Response> =>
  fetch(new URL(`${path(id)}?how=autosave`, server.address), {
    method: 'PUT',
    headers: { 'content-type': 'application/json', 'if-match': `"${revision}"` },
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
        revision: stored.revision,
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
        let stored = await read(server, id);
        let acknowledged = stored;
        const killing = new Promise<void>((resolve) =>
          setTimeout(() => void server.kill().then(resolve), ms),
        );
        for (let i = 0; ; i++) {
          const next = { job: { ...stored.job, title: `save ${ms}.${i}` }, revision: stored.revision };
          const answer = await put(server, id, next).catch(() => null);
          if (answer?.ok !== true) break;
          stored = { job: next.job, revision: ((await answer.json()) as { revision: number }).revision };
          acknowledged = stored;
        }
        await killing;
        server = await server.again();
        const found = await read(server, id);
        expect(found.revision).toBeGreaterThanOrEqual(acknowledged.revision);
        if (found.revision === acknowledged.revision) expect(found.job).toEqual(acknowledged.job);
      }
    } finally {
      await server.close();
    }
  }, 90_000);
});
