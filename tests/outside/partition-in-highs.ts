import type loadHighs from 'highs';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { byPence } from '#engine/schemes/search/aim.ts';
import { buildSpace } from '#engine/schemes/search/build-space.ts';
import { searchGround } from '#engine/schemes/search/search-ground.ts';
import type { Column, Layer, SearchSpace } from '#engine/schemes/search/search-space.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { workshop } from '#engine/schemes/search/workshop.ts';
import { tariffFor } from '#engine/schemes/tariff.ts';
import { workHouse } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { VariedHouse } from '../engine/schemes/search/varied-house.ts';

/** The integer programming solver, once it is loaded. */
export type Highs = Awaited<ReturnType<typeof loadHighs>>;

const library = demoLibrary();

/** All that can be chosen from in a house, as the search weighs it; what leads nowhere is in neither question. */
export function spaceOfHouse({ job, allowAssumedLegs }: VariedHouse): SearchSpace {
  const house = workHouse(job, tariffFor(job, library), defaultLengthAllowances);
  const ground = searchGround(house, library, { ways: waysInHouse(house, library), allowAssumedLegs });
  const { points, layers, free } = buildSpace(workshop(ground, byPence)).space;
  let n = 0;
  const named = (columns: readonly Column[]): readonly Column[] =>
    columns.flatMap(({ mask, cost }) => (Number.isFinite(cost) ? [{ mask, cost, key: `c${n++}` }] : []));
  return {
    points,
    layers: layers.map(({ id, columns }) => ({ id, columns: named(columns) })),
    free: named(free),
  };
}

/** A set of s points leaves n − s points, so that at most n − s attachments are taken by others: the n − s + 1 cheapest suffice. */
function pruned({ points, layers }: SearchSpace): readonly Layer[] {
  const all = layers.flatMap(({ columns }) => columns).toSorted((a, b) => a.cost - b.cost);
  const kept = new Set<Column>();
  for (let mask = 1; mask < 2 ** points; mask++) {
    const size = [...mask.toString(2)].filter((bit) => bit === '1').length;
    for (const column of all.filter((one) => one.mask === mask).slice(0, points - size + 1)) kept.add(column);
  }
  return layers.map(({ id, columns }) => ({ id, columns: columns.filter((column) => kept.has(column)) }));
}

/** The same question as a set partitioning in the solver's words; a dear stand-in for each point keeps it solvable. */
function modelOf(space: SearchSpace): string {
  const layers = pruned(space);
  const columns = [...layers.flatMap((layer) => layer.columns), ...space.free];
  const sum = (some: readonly Column[]): string => some.map(({ key }) => key).join(' + ');
  const connected = Array.from({ length: space.points }, (_, i) => {
    const through = columns.filter(({ mask }) => mask & (1 << i));
    return ` p${i}: ${[`none${i}`, ...through.map(({ key }) => key)].join(' + ')} = 1`;
  });
  const once = layers
    .filter((layer) => layer.columns.length > 0)
    .map((layer, k) => ` l${k}: ${sum(layer.columns)} <= 1`);
  const standIns = Array.from({ length: space.points }, (_, i) => `none${i}`);
  const standIn = standInOf(columns, space.points);
  return [
    'Minimize',
    ` cost: ${[...columns.map((one) => `${one.cost} ${one.key}`), ...standIns.map((one) => `${standIn} ${one}`)].join(' + ')}`,
    'Subject To',
    ...connected,
    ...once,
    'Binary',
    ...[...columns.map(({ key }) => key), ...standIns].map((name) => ` ${name}`),
    'End',
  ].join('\n');
}

/** Dearer than any choice without one. */
const standInOf = (columns: readonly Column[], points: number): number =>
  1 + points * Math.max(1, ...columns.map(({ cost }) => cost));

/**
 * Its optimum, added up of the columns that it takes, since the solver counts in fractions; null where only a stand-in
 * connects some point.
 */
export function leastByHighs(highs: Highs, space: SearchSpace): number | null {
  const solution = highs.solve(modelOf(space), { mip_rel_gap: 0, mip_abs_gap: 0 });
  if (solution.Status !== 'Optimal') throw new Error(`HiGHS ended with ${solution.Status}.`);
  const taken = new Set(
    Object.values(solution.Columns).flatMap((column) =>
      'Primal' in column && (column.Primal ?? 0) > 0.5 ? [column.Name] : [],
    ),
  );
  if ([...taken].some((name) => name.startsWith('none'))) return null;
  const columns = [...space.layers.flatMap((layer) => layer.columns), ...space.free];
  return columns.reduce((cost, column) => (taken.has(column.key) ? cost + column.cost : cost), 0);
}
