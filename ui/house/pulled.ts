import type { Plan } from '#engine/plan/plan.ts';
import type { Storey } from '#model/building.ts';
import { corneredFixture, draggedFixture, steppedFixture } from './fixture-place.ts';
import { GRID_MM } from './grid.ts';
import type { HousePart, StretchPart } from './house-parts.ts';
import { cornerMoved, type Reshape } from './reshape.ts';
import { snappedCorner, snappedMove } from './snap.ts';
import { dot, leftOf, plus, times, type Vector } from './vector.ts';
import { directionOf, type Stretch } from './wall-line.ts';

type Drawn = Pick<Storey, 'walls' | 'rooms' | 'fixtures'>;

/** A part of the house that a hand pulls, or keys bring on. */
export interface Pull {
  readonly part: HousePart;
  /** From where it was taken, mm. */
  readonly by: Vector;
  /** How far off something still holds it, mm; null for what nothing holds: keys go where they say. */
  readonly reachMm: number | null;
}

/** What a pull means, and the lines that hold it. */
export interface Pulled {
  readonly asked: Reshape;
  readonly guides: readonly Stretch[];
}

/** What a pull of a part means; null for a part that is not there, or a stretch that has no two marks yet. */
export function pulled(storey: Drawn, { part, by, reachMm }: Pull, map: Plan['wallById']): Pulled | null {
  const isFree = reachMm === null || (by[0] === 0 && by[1] === 0);
  switch (part.part) {
    case 'wall':
      return pulledWall(storey, part.wallId, { by, reachMm: isFree ? null : reachMm }, map);
    case 'stretch':
      return pulledStretch(storey, part, by, isFree);
    case 'corner': {
      if (isFree) return { asked: cornerMoved(part.at, by), guides: [] };
      const { to, guides } = snappedCorner(storey, { at: part.at, to: plus(part.at, by) }, reachMm);
      return { asked: { part: 'corner', at: part.at, to }, guides };
    }
    case 'fixture': {
      const fixture = storey.fixtures.find(({ id }) => id === part.fixtureId);
      if (fixture === undefined) return null;
      const to = isFree ? fixture.outline : draggedFixture(storey, fixture, { by, reachMm }, map);
      return { asked: broughtTo(fixture, to), guides: [] };
    }
  }
}

function pulledWall(
  storey: Drawn,
  wallId: string,
  { by, reachMm }: Pick<Pull, 'by' | 'reachMm'>,
  map: Plan['wallById'],
): Pulled | null {
  const wall = storey.walls.find(({ id }) => id === wallId);
  if (wall === undefined) return null;
  const byMm = dot(by, leftOf(directionOf(wall)));
  if (reachMm === null) return { asked: { part: 'wall', wallId, byMm }, guides: [] };
  const snapped = snappedMove(storey, { wallId, byMm }, reachMm, map);
  return {
    asked: { part: 'wall', wallId, byMm: snapped.byMm },
    guides: snapped.guide === null ? [] : [snapped.guide],
  };
}

function pulledStretch(
  storey: Drawn,
  { wallId, side, marks: [a, b] }: StretchPart,
  by: Vector,
  isFree: boolean,
): Pulled | null {
  const wall = storey.walls.find(({ id }) => id === wallId);
  if (wall === undefined || a === undefined || b === undefined) return null;
  const mm = dot(by, leftOf(directionOf(wall)));
  const byMm = isFree ? mm : Math.round(mm / GRID_MM) * GRID_MM;
  return { asked: { part: 'stretch', wallId, side, marks: [a, b], byMm }, guides: [] };
}

const broughtTo = (
  { id, outline }: Pick<Storey['fixtures'][number], 'id' | 'outline'>,
  to: readonly Vector[],
): Reshape => ({ part: 'fixture', fixtureId: id, at: outline, to, isMeasured: false });

const arrows: Readonly<Record<string, Vector>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** A part that keys have brought on by so much, and to where; nothing of it where they only begin. */
export interface Brought {
  readonly part: HousePart;
  readonly by: Vector;
  readonly asked: Reshape | null;
}

/**
 * What a key does to a part: arrows bring it on by a step, Home and End what is fixed into the corners of its wall.
 *
 * @returns null for a key that does nothing to it.
 */
export function steppedByKey(
  storey: Drawn,
  before: Brought,
  [key, stepMm]: readonly [key: string, stepMm: number],
  map: Plan['wallById'],
): (Pulled & { readonly by: Vector }) | null {
  const { part } = before;
  const way = arrows[key];
  if (part.part === 'fixture') {
    const fixture = storey.fixtures.find(({ id }) => id === part.fixtureId);
    if (fixture === undefined) return null;
    const at = before.asked?.part === 'fixture' ? before.asked.to : fixture.outline;
    if (way !== undefined) {
      const to = steppedFixture(storey, at, [way, stepMm], map);
      return { asked: broughtTo(fixture, to), guides: [], by: [0, 0] };
    }
    if (key !== 'Home' && key !== 'End') return null;
    const to = corneredFixture(storey, at, key === 'Home' ? 'left' : 'right', map);
    return { asked: broughtTo(fixture, to), guides: [], by: [0, 0] };
  }
  if (way === undefined) return null;
  const by = plus(before.by, times(way, stepMm));
  const made = pulled(storey, { part, by, reachMm: null }, map);
  return made === null ? null : { ...made, by };
}
