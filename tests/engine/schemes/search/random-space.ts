import fc from 'fast-check';
import type { Choice, Column, SearchSpace } from '#engine/schemes/search/search-space.ts';

/** Small whole costs, so that ties are common; now and then nothing leads there. */
const cost = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: 0, max: 12 }) },
  { weight: 1, arbitrary: fc.constant(Number.POSITIVE_INFINITY) },
);

/** A symmetric matrix of so many points, and two rows of ends. */
export const pointCosts = (most: number) =>
  fc.integer({ min: 0, max: most }).chain((points) =>
    fc
      .tuple(
        fc.array(cost, { minLength: points ** 2, maxLength: points ** 2 }),
        fc.array(cost, { minLength: points, maxLength: points }),
        fc.array(cost, { minLength: points, maxLength: points }),
      )
      .map(([cells, fromA, fromB]) => ({
        points,
        cost: cells.map(
          (_, at) =>
            cells[
              Math.min(Math.floor(at / points), at % points) * points +
                Math.max(Math.floor(at / points), at % points)
            ] ?? 0,
        ),
        fromA,
        fromB,
      })),
  );

/** Spaces with variants, free columns, holes and ties. */
export const spaces = (most: { points: number; layers: number; columns: number }) =>
  fc.integer({ min: 0, max: most.points }).chain((points) => {
    const columns = fc.array(
      fc.record({ mask: fc.integer({ min: 1, max: Math.max(1, 2 ** points - 1) }), cost: cost }),
      { maxLength: points === 0 ? 0 : most.columns },
    );
    return fc
      .tuple(fc.array(columns, { maxLength: most.layers }), columns)
      .map(([layers, free]) => spaceOf(points, layers, free));
  });

type Bare = Omit<Column, 'key'>;

function spaceOf(points: number, layers: readonly (readonly Bare[])[], free: readonly Bare[]): SearchSpace {
  const keyed = (name: string, columns: readonly Bare[]): Column[] =>
    columns.map((column, i) => ({ ...column, key: `${name}/${(i * 7) % 11}-${i}` }));
  return {
    points,
    layers: layers.map((columns, k) => ({ id: `layer-${k}`, columns: keyed(`k${k}`, columns) })),
    free: keyed('free', free),
  };
}

/** Every choice there is, by trying all; in no order. */
export function everyChoice(space: SearchSpace): readonly Choice[] {
  const found: Choice[] = [];
  const lists = [
    ...space.layers.map(({ columns }) => [null, ...columns]),
    ...space.free.map((one) => [null, one]),
  ];
  const go = (at: number, rest: number, taken: readonly Column[]): void => {
    const list = lists[at];
    if (list === undefined) {
      if (rest !== 0) return;
      const cost = taken.reduce((sum, column) => sum + column.cost, 0);
      if (Number.isFinite(cost)) found.push({ cost, columns: inKeyOrder(taken) });
      return;
    }
    for (const column of list) {
      if (column === null) go(at + 1, rest, taken);
      else if ((column.mask & rest) === column.mask) go(at + 1, rest ^ column.mask, [...taken, column]);
    }
  };
  go(0, 2 ** space.points - 1, []);
  return found;
}

const inKeyOrder = (columns: readonly Column[]): readonly Column[] =>
  columns.toSorted((a, b) => (a.key < b.key ? -1 : 1));

/** One line a choice, to compare sets of them. */
export const nameOf = ({ columns, cost }: Choice): string =>
  `${cost}: ${columns.map(({ key }) => key).join(' ')}`;
