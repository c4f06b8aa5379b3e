import { startServer } from '../../product/running-server.ts';
import { medianOf } from '../growth.ts';
import type { FigureGroup } from '../measuring.ts';

/** From the start of the server's process, on a store that is there, to its first answer. */
export const startFigures: FigureGroup = {
  name: 'start',
  measure: async ({ rounds }) => {
    let server = await startServer();
    const times: number[] = [];
    try {
      for (let round = 0; round < rounds; round += 1) {
        await server.kill();
        const start = performance.now();
        server = await server.again();
        const answer = await fetch(`${server.address}/api/jobs`);
        await answer.text();
        times.push(performance.now() - start);
        if (!answer.ok) throw new Error(`the first answer was ${answer.status}`);
      }
      return { coldStartMs: medianOf(times) };
    } finally {
      await server.close();
    }
  },
};
