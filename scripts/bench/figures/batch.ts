import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { houseOf } from '#tests/houses/house-of.ts';
import { spursOf } from '#tests/houses/spurs-of.ts';
import type { FigureGroup } from '../measuring.ts';
import { type ProcessUse, useOf } from '../process-use.ts';

const WORKERS = 2;
/** So many houses differ, of four to six rooms and one or two wanted points; then they come round again. */
const HOUSES = 500;
const LOOK_MS = 200;
const MS_A_SECOND = 1000;

function houseText(seed: number): string {
  const job = houseOf({ seed, rooms: 4 + (seed % 3), wanted: 1 + (seed % 2) });
  return JSON.stringify({ ...job, schemes: [spursOf(job)] });
}

/** Feeds so many jobs to a process, no faster than it takes them. */
async function feed({ stdin }: ChildProcess, texts: readonly string[], jobs: number): Promise<void> {
  if (stdin === null) throw new Error('The batch has no input.');
  for (let i = 0; i < jobs; i += 1)
    if (!stdin.write(`${texts[i % texts.length]}\n`)) await once(stdin, 'drain');
  stdin.end();
}

/** Runs a batch in a process of its own; what it used is looked at while it runs. */
async function runBatch(
  texts: readonly string[],
  jobs: number,
  outPath: string,
): Promise<ProcessUse & { ms: number }> {
  const start = performance.now();
  const script = [
    '--import',
    'tsx',
    join('scripts', 'estimate.ts'),
    '--batch',
    '-',
    '--workers',
    String(WORKERS),
  ];
  const child = spawn(process.execPath, [...script, '--out', outPath, '--date', '2026-11-27'], {
    stdio: ['pipe', 'ignore', 'ignore'],
  });
  const ended = once(child, 'exit') as Promise<[number | null]>;
  let use: ProcessUse | null = null;
  const look = setInterval(() => {
    use = useOf(child.pid ?? 0) ?? use;
  }, LOOK_MS);
  try {
    await Promise.all([feed(child, texts, jobs), ended]);
  } finally {
    clearInterval(look);
  }
  if (use === null) throw new Error('this system does not tell what a process uses');
  return { ...(use as ProcessUse), ms: performance.now() - start };
}

/** Jobs of a long batch a second and core, by the clock or by the processor's time, and the most memory that it had. */
export const batchFigures: FigureGroup = {
  name: 'batch',
  measure: async ({ jobs }) => {
    const texts = Array.from({ length: Math.min(HOUSES, jobs) }, (_, i) => houseText(i + 1));
    const folder = await mkdtemp(join(tmpdir(), 'ringwright-'));
    const path = join(folder, 'batch.jsonl');
    try {
      const { ms, cpuS, peakMB } = await runBatch(texts, jobs, path);
      const lines = (await readFile(path, 'utf8')).trimEnd().split('\n');
      const done = lines.filter((line) => JSON.parse(line).schemes?.length === 1).length;
      if (done !== jobs) throw new Error(`${done} of ${jobs} jobs were estimated`);
      const coreS = Math.min((ms / MS_A_SECOND) * WORKERS, cpuS);
      return { batchJobsPerSecondPerCore: jobs / coreS, peakMemoryMB: peakMB };
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  },
};
