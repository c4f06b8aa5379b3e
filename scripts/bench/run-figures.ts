import type { BenchArguments } from './arguments.ts';
import { batchFigures } from './figures/batch.ts';
import { buyFigures } from './figures/buying.ts';
import { startFigures } from './figures/cold-start.ts';
import { dragFigures } from './figures/drag.ts';
import { growthFigures } from './figures/estimate-growth.ts';
import { loadFigures } from './figures/first-load.ts';
import { estimateFigures } from './figures/http-estimate.ts';
import { readFigures } from './figures/job-read.ts';
import { networkFigures } from './figures/network.ts';
import { searchFigures } from './figures/search.ts';
import { workbookFigures } from './figures/workbook.ts';
import { type Figures, figureNames, figureTable } from './figures.ts';
import type { FigureGroup } from './measuring.ts';

const groups: readonly FigureGroup[] = [
  growthFigures,
  networkFigures,
  searchFigures,
  buyFigures,
  workbookFigures,
  estimateFigures,
  readFigures,
  dragFigures,
  loadFigures,
  startFigures,
  batchFigures,
];

/** Measures the benchmark's figures, one group after the other, and prints them; 1 where what is compared differs. */
export async function runFigures({ only, json, rounds, jobs }: BenchArguments): Promise<number> {
  const unknown = only.filter((name) => groups.every((group) => group.name !== name));
  if (unknown.length > 0)
    throw new Error(
      `there are no figures "${unknown.join('", "')}", but ${groups.map(({ name }) => name).join(', ')}`,
    );
  let all: Figures = {};
  for (const group of groups) {
    if (only.length > 0 && !only.includes(group.name)) continue;
    process.stderr.write(`${group.name} …\n`);
    all = { ...all, ...(await group.measure({ rounds, jobs })) };
  }
  const inOrder: Figures = Object.fromEntries(
    figureNames.flatMap((name) => (name in all ? [[name, all[name] ?? null]] : [])),
  );
  process.stdout.write(json ? `${JSON.stringify(inOrder)}\n` : figureTable(inOrder));
  return Object.values(inOrder).includes(null) ? 1 : 0;
}
