import type { CutList, ListShape } from '../engine/price/buying/random-cut-list.ts';
import { kindsOf, patternsOf } from './cut-patterns.ts';
import type { Highs } from './partition-in-highs.ts';

/**
 * Runs of 3 to 12 pieces; every sixth list tubes, every sixth one of 13 to 20 runs of few lengths or of long ones: so
 * there are no more patterns than the solver gets through.
 */
export function cutListShape(i: number): ListShape {
  const few = 3 + (i % 10);
  if (i % 6 === 1)
    return { pieces: few, fromMm: 300, toMm: 2000, wholesM: [2, 3], stepsMm: [], van: i % 4 === 1 ? 2 : 0 };
  const many = 13 + (i % 8);
  if (i % 12 === 2)
    return {
      pieces: many,
      fromMm: 1500,
      toMm: 8500,
      kinds: 4,
      wholesM: [25, 50],
      stepsMm: [1000],
      van: i % 3,
    };
  if (i % 12 === 8)
    return { pieces: many, fromMm: 6500, toMm: 12_000, wholesM: [25], stepsMm: [1000], van: i % 3 };
  const stepsMm = i % 4 === 0 ? [] : [i % 5 === 0 ? 500 : 1000];
  if (few > 9) return { pieces: few, fromMm: 4000, toMm: 12_000, wholesM: [25, 100], stepsMm, van: i % 4 };
  return { pieces: few, fromMm: 1500, toMm: 12_000, wholesM: [25, 50, 100], stepsMm, van: i % 4 };
}

interface Column {
  readonly name: string;
  readonly pence: number;
  readonly takes: readonly number[];
}

/**
 * The same question as a cutting-stock model in the solver's words: whole numbers of every full pattern, pieces cut to
 * measure, steps of the cut length. Demands are covered, so that full patterns are enough.
 */
export function cuttingModel(list: CutList): string {
  const kinds = kindsOf(list);
  const wholes = list.offers.filter(({ least }) => least === null);
  const cut = list.offers.find(({ least }) => least !== null);
  const columnsOf = (prefix: string, lengthMm: number, pence: number): readonly Column[] =>
    patternsOf(kinds, lengthMm).map((takes, i) => ({ name: `${prefix}p${i}`, pence, takes }));
  const bought = wholes.flatMap(({ quantity, millipence }, i) =>
    columnsOf(`w${i}`, quantity, millipence / 1000),
  );
  const held = list.vanMm.map((lengthMm, i) => columnsOf(`v${i}`, lengthMm, 0));
  const columns = [...bought, ...held.flat()];
  const cutPence = cut === undefined ? [] : [`${cut.millipence / 1000} steps`];
  const covered = kinds.map(({ count }, kind) => {
    const through = columns
      .filter(({ takes }) => (takes[kind] ?? 0) > 0)
      .map(({ name, takes }) => `${takes[kind]} ${name}`);
    return ` k${kind}: ${[...through, ...(cut === undefined ? [] : [`z${kind}`])].join(' + ')} >= ${count}`;
  });
  const once = held.flatMap((some, i) =>
    some.length === 0 ? [] : [` v${i}: ${some.map(({ name }) => name).join(' + ')} <= 1`],
  );
  const total = kinds.reduce((sum, { count }) => sum + count, 0);
  const cutting =
    cut === undefined
      ? []
      : [
          ` long: ${cut.quantity / 10} steps ${kinds.map(({ lengthMm }, kind) => `- ${lengthMm / 10} z${kind}`).join(' ')} >= 0`,
          ` least: steps - ${(cut.least ?? 0) / cut.quantity} any >= 0`,
          ` any: ${total} any ${kinds.map((_, kind) => `- z${kind}`).join(' ')} >= 0`,
        ];
  const cutNames = cut === undefined ? [] : ['steps', ...kinds.map((_, kind) => `z${kind}`)];
  return [
    'Minimize',
    ` cost: ${[...columns.map(({ name, pence }) => `${pence} ${name}`), ...cutPence].join(' + ')}`,
    'Subject To',
    ...covered,
    ...once,
    ...cutting,
    'General',
    ...[...columns.map(({ name }) => name), ...cutNames].map((name) => ` ${name}`),
    ...(cut === undefined ? [] : ['Binary', ' any']),
    'End',
  ].join('\n');
}

/** Its optimum, whole pence: with less than a penny between cost and bound it is proved. */
export function leastCutByHighs(highs: Highs, model: string): number {
  const solution = highs.solve(model, { mip_rel_gap: 0, mip_abs_gap: 0.9 });
  if (solution.Status !== 'Optimal') throw new Error(`HiGHS ended with ${solution.Status}.`);
  return Math.round(solution.ObjectiveValue);
}
