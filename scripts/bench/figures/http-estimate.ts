import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { estimateJson } from '#exports/estimate-json.ts';
import { readJobText } from '#model/read-job.ts';
import { houseOf } from '#tests/houses/house-of.ts';
import { spursOf } from '#tests/houses/spurs-of.ts';
import { testApp } from '#tests/http/test-app.ts';
import { startServer } from '../../../api/http/server.ts';
import { medianOf } from '../growth.ts';
import { byTurns, type FigureGroup } from '../measuring.ts';

const HOUSE = { seed: 1, rooms: 5, wanted: 2 };
/** The difference of two times of several milliseconds wants many of them. */
const TURNS_A_ROUND = 20;

function jobText(): string {
  const job = houseOf(HOUSE);
  return JSON.stringify({ ...job, schemes: [spursOf(job)] });
}

/** What it takes to post a job over what it takes to read, estimate and write the same in process; null where the two differ. */
export const estimateFigures: FigureGroup = {
  name: 'estimate',
  measure: async ({ rounds }) => {
    const { app } = await testApp();
    const server = await startServer({ app, host: '127.0.0.1', port: 0, tls: null });
    const text = jobText();
    const library = demoLibrary();
    const post = async (): Promise<string> => {
      const headers = { 'content-type': 'application/json' };
      const answer = await fetch(`${server.url}/api/estimate`, { method: 'POST', headers, body: text });
      return answer.text();
    };
    const called = (): string => {
      const read = readJobText(text);
      if (!read.ok) throw new Error('The invented house cannot be read.');
      return estimateJson(estimate(read.job, library, { date: '2026-11-25', revision: 1 }));
    };
    const clocked = async (work: () => string | Promise<string>): Promise<number> => {
      const start = performance.now();
      await work();
      return performance.now() - start;
    };
    try {
      const isEqual = (await post()) === called();
      await byTurns(TURNS_A_ROUND, { posted: () => clocked(post), inProcess: () => clocked(called) });
      const times = await byTurns(rounds * TURNS_A_ROUND, {
        posted: () => clocked(post),
        inProcess: () => clocked(called),
      });
      const added = times.posted.map((ms, i) => ms - (times.inProcess[i] ?? Number.NaN));
      return { httpEstimateAddedMs: isEqual ? medianOf(added) : null };
    } finally {
      await server.stop();
    }
  },
};
