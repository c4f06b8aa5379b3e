import type { Cable } from '#model/cable.ts';
import { roomAt } from '../../plan/surroundings.ts';
import type { WayAim, WayEnd } from '../../ways/way-cost.ts';
import type { SearchGround, WantedPoint } from './search-ground.ts';
import type { Works } from './works.ts';

/**
 * What was found out of a house and holds while nothing but the places of its wanted points changes. Names say all that
 * a cost hangs on, so that a cost kept is the cost that would be worked out.
 */
export interface Kept {
  /** What ends take, by their kind. */
  readonly costs: Map<string, Works>;
  /** One object for each place that a cable may end at. */
  readonly ends: Map<string, WayEnd>;
  /** The ends numbered as they came. */
  readonly ages: Map<WayEnd, number>;
  /** Cables laid between them, by what their ways are chosen by. */
  readonly links: Readonly<Record<WayAim, LinkTable>>;
}

/** Cables laid, by cable and both ends. */
export type LinkTable = Map<Cable, Map<WayEnd, Map<WayEnd, Link>>>;

/** One new cable, laid. Infinite money where none can be. */
export type Link = Works;

/** Nothing found out yet. */
export const nothingKept = (): Kept => ({
  costs: new Map(),
  ends: new Map(),
  ages: new Map(),
  links: { pence: new Map(), mess: new Map() },
});

/** The works that go by this name, worked out where they are not known. */
export function keptCost({ costs }: Kept, name: string, work: () => Works): Works {
  const known = costs.get(name);
  if (known !== undefined) return known;
  const works = work();
  costs.set(name, works);
  return works;
}

/** The one object for this end. */
export function keptEnd({ ends, ages }: Kept, end: WayEnd): WayEnd {
  const { position, mount, kind } = end;
  const { storeyId, at, heightMm, onWall } = position;
  const wall = onWall === undefined ? '' : `${onWall.wallId} ${onWall.side} ${onWall.alongMm}`;
  const name = `${storeyId} ${at[0]} ${at[1]} ${heightMm} ${wall} ${mount} ${kind}`;
  const known = ends.get(name);
  if (known !== undefined) return known;
  ends.set(name, end);
  ages.set(end, ages.size);
  return end;
}

/** All that the cost of a wanted point's ends hangs on: what it is, and what it sits in; not where along it. */
export function kindOfPoint({ house: { plan } }: SearchGround, { point, end }: WantedPoint): string {
  const { place: _, label: __, ...own } = point;
  const { storeyId, at, heightMm } = end.position;
  const room = roomAt(plan, storeyId, at)?.room.id ?? '';
  return JSON.stringify([own, kindOfSpot(plan, end.position), storeyId, room, heightMm]);
}

/** What a box at a spot is let into. */
export function kindOfSpot(
  { wallById }: SearchGround['house']['plan'],
  { onWall }: WantedPoint['end']['position'],
): string {
  const wall = wallById.get(onWall?.wallId ?? '')?.wall;
  return wall === undefined || onWall === undefined ? '' : `${wall.id} ${onWall.side}`;
}
