import type { DragInBrowser, MovesInBrowser } from './moves-in-browser.ts';
import type { BenchResult } from './result.ts';
import { type Stage, stages } from './stages.ts';

/** What the whole may grow by at most: a little more than the house does. */
export const MOST_GROWTH = 1.3;

const FIRST = 34;
const EACH = 15;

const msWords = (ms: number | undefined): string =>
  ms === undefined ? '–' : ms < 10 ? ms.toFixed(2) : ms.toFixed(0);

/** The result for people: stages down, subjects across, in milliseconds; the growth at the end of each line. */
export function benchTable({ rounds, wanted, times, growth, drags }: BenchResult): string {
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
    ...(drags === undefined
      ? []
      : [...drags.moves.map(moveWords), ...[...drags.moves, drags.house].map(dragWords)]),
    '',
  ].join('\n');
}

/** What re-routing and searching again at each move asks of the page's main thread at most, ms. */
export const MOST_SEARCH_MS = 12;

function moveWords({ name, moveMs, moveAndSearchMs, answersPerMove }: MovesInBrowser): string {
  const searchMs = moveAndSearchMs - moveMs;
  const verdict = searchMs <= MOST_SEARCH_MS ? 'within' : 'beyond';
  return `${name}, one of six wanted points moved in the browser: main thread ${msWords(moveMs)} ms a move, ${msWords(moveAndSearchMs)} with ways searched again; the search asks ${msWords(searchMs)} of it, ${verdict} the ${MOST_SEARCH_MS} at most; ${answersPerMove.toFixed(2)} new answers a move.`;
}

/** What one move of a drag may ask of the page's main thread at most, of a hundred moves in all but five, ms. */
export const MOST_DRAG_MS = 12;

function dragWords({ name, dragWorkMs: { median, p95 } }: DragInBrowser): string {
  const verdict = p95 <= MOST_DRAG_MS ? 'within' : 'beyond';
  return `${name}, a wanted point dragged: dragWorkMs ${msWords(median)} in the middle, ${msWords(p95)} at the 95th percentile, ${verdict} the ${MOST_DRAG_MS} at most.`;
}
