import { roomAt } from '../../plan/surroundings.ts';
import type { SearchGround, WantedPoint } from './search-ground.ts';

/**
 * What ends cost, by their kind: worked out once in a house, and kept while nothing but the places of its wanted
 * points changes. Names say all that a cost hangs on, so that a cost kept is the cost that would be worked out.
 */
export type KeptCosts = Map<string, number>;

/** The cost that goes by this name, worked out where it is not known. */
export function keptCost(kept: KeptCosts, name: string, work: () => number): number {
  const known = kept.get(name);
  if (known !== undefined) return known;
  const millipence = work();
  kept.set(name, millipence);
  return millipence;
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
