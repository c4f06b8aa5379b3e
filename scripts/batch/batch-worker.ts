import { parentPort, workerData } from 'node:worker_threads';
import { type BatchInput, batchLine, standingOf } from './batch-line.ts';
import type { BatchAnswer, WorkerTerms } from './batch-workers.ts';

const { by, ...terms } = workerData as WorkerTerms;

// Files come one after the other, and so do their lines: who sent them tells them apart by their order.
parentPort?.on('message', (input: BatchInput) => {
  const line = batchLine(input, terms, by);
  const answer: BatchAnswer = {
    at: line.at,
    text: JSON.stringify(line),
    standing: standingOf(line),
    faults: 'faults' in line ? line.faults : [],
  };
  parentPort?.postMessage(answer);
});
