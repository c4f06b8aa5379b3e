import type { BenchResult } from './result.ts';
import { type Stage, stages } from './stages.ts';

/** What the whole may grow by at most: a little more than the house does. */
export const MOST_GROWTH = 1.3;

const FIRST = 34;
const EACH = 15;

const msWords = (ms: number | undefined): string =>
  ms === undefined ? '–' : ms < 10 ? ms.toFixed(2) : ms.toFixed(0);

/** The result for people: stages down, subjects across, in milliseconds; the growth at the end of each line. */
export function benchTable({ rounds, wanted, times, growth }: BenchResult): string {
  const row = (name: string, cells: readonly string[]): string =>
    name.padEnd(FIRST) + cells.map((cell) => cell.padStart(EACH)).join('');
  const lines = (Object.keys(stages) as Stage[]).map((stage) =>
    row(stages[stage], [...times.map(({ ms }) => msWords(ms[stage])), growth[stage]?.toFixed(2) ?? '–']),
  );
  const sizes = times.filter(({ rooms }) => rooms !== undefined);
  const whole = growth.whole ?? Number.NaN;
  const verdict = whole <= MOST_GROWTH ? 'within' : 'beyond';
  return [
    `Medians of ${rounds} rounds, ms; houses with ${wanted} wanted points. Growth: e in time ~ rooms^e.`,
    row('', [...times.map(({ name }) => name), 'growth']),
    ...lines,
    ...(sizes.length > 1
      ? [
          `The whole search grows with e = ${whole.toFixed(2)}, ${verdict} the ${MOST_GROWTH} asked for at most.`,
        ]
      : []),
    '',
  ].join('\n');
}
