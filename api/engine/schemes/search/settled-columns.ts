import { isChased } from '../../ways/lay-in-wall.ts';
import type { WayAim, WayEnd } from '../../ways/way-cost.ts';
import { linkAim } from './link-costs.ts';
import type { SchemeColumn } from './scheme-column.ts';
import type { SearchSpace } from './search-space.ts';
import { type CableBetween, type LaidCable, sharedWorks } from './shared-works.ts';
import { once } from './spots-in-turn.ts';
import { type Works, worksLess } from './works.ts';
import type { Workshop } from './workshop.ts';

/** Up to so many wanted points what the cables of one connection share is searched for: beyond, there are too many sets of them. */
export const SHARING_POINTS = 6;

/**
 * A space whose columns of several cables cost no more than they could if these shared all that cables can, until somebody asks
 * what they do share (`settled`). Which order, opening, tree and place of a unit a column has was chosen before, with each cable by
 * itself.
 */
export function withSharing(shop: Workshop, space: SearchSpace<SchemeColumn>): SearchSpace<SchemeColumn> {
  if (space.points > SHARING_POINTS || !mayShare(shop)) return space;
  const savedBy = savings(shop);
  const loosened = (column: SchemeColumn): SchemeColumn => {
    const { next, cables, mostShared = 0 } = column;
    const own: SchemeColumn =
      next === undefined
        ? column
        : {
            ...column,
            next: once(() => {
              const other = next();
              return other === null ? null : loosened(other);
            }),
          };
    if (cables === undefined || mostShared === 0) return own;
    const settled = once((): SchemeColumn => {
      const saved = savedBy(cables());
      const works = worksLess(column.works(), saved);
      return { ...own, cost: Math.max(0, column.cost - shop.weigh(saved)), works: () => works };
    });
    return { ...own, cost: Math.max(0, column.cost - mostShared), settled };
  };
  return {
    points: space.points,
    layers: space.layers.map(({ id, columns }) => ({ id, columns: columns.map(loosened) })),
    free: space.free.map(loosened),
  };
}

/** Whether anywhere a floor may have to come up, or a wall is chased. */
function mayShare({ ground }: Workshop): boolean {
  const { plan } = ground.house;
  if ([...plan.wallById.values()].some(isChased)) return true;
  return plan.storeys.some(({ storey }) =>
    [storey.floor, ...storey.rooms.flatMap(({ floor }) => floor ?? [])].some(
      ({ build }) => build !== 'concrete',
    ),
  );
}

/** What the cables of one connection save by what they share, each laid by the way that the aim takes. */
function savings({ ground, aim, link }: Workshop): (cables: readonly CableBetween[]) => Works {
  const by = linkAim(ground, aim);
  const ways = new Map<WayEnd, Map<WayEnd, Map<WayAim, LaidCable['segments']>>>();
  const segmentsOf = (from: WayEnd, to: WayEnd, way: WayAim): LaidCable['segments'] => {
    const row = kept(ways, from, () => new Map<WayEnd, Map<WayAim, LaidCable['segments']>>());
    const known = kept(row, to, () => new Map<WayAim, LaidCable['segments']>());
    return kept(known, way, () => ground.ways.route(from, to, way).segments);
  };
  return (cables) =>
    sharedWorks(
      ground.house,
      cables.map(
        ({ from, to, ...carrying }): LaidCable => ({
          ...carrying,
          works: link(from, to, carrying.cable),
          segments: from === null || to === null ? [] : segmentsOf(from, to, by(from, to, carrying.cable)),
        }),
      ),
    );
}

function kept<K, V>(map: Map<K, V>, key: K, work: () => V): V {
  const known = map.get(key);
  if (known !== undefined) return known;
  const value = work();
  map.set(key, value);
  return value;
}

/** A column as it stands in a choice: settled, if it is. */
export const inPlaceOf = ({ settled }: Workshop, column: SchemeColumn): SchemeColumn =>
  settled.get(column) ?? column;

/**
 * Settles the columns of a choice that are loose still, each with those of its layer, or in any leg those for the same points: they
 * come up next.
 *
 * @returns whether any was.
 */
export function settle(
  { settled }: Workshop,
  { layers, free }: SearchSpace<SchemeColumn>,
  columns: readonly SchemeColumn[],
): boolean {
  const loose = columns.filter((column) => column.settled !== undefined);
  for (const column of loose) {
    const layer = layers.find((each) => each.columns.includes(column));
    const beside = layer?.columns ?? free.filter(({ mask }) => mask === column.mask);
    for (const each of [column, ...beside])
      if (each.settled !== undefined && !settled.has(each)) settled.set(each, each.settled());
  }
  return loose.length > 0;
}
