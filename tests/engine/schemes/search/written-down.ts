import type { LengthAllowances, Run } from '#engine/ways/run.ts';
import type { Leg, Place, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Connection, Feed, Tap } from '#model/scheme.ts';

/** A connection without its id, as a person might write it. */
export type Draft = Connection extends infer C ? (C extends Connection ? Omit<C, 'id'> : never) : never;

/** A cable of a tree; from `null` it starts at the tree's root. */
export interface Branch {
  readonly from: string | null;
  readonly to: string;
}

/** Every tree that reaches all of some points from a root, feeders first. */
export function treesOver(points: readonly string[]): readonly (readonly Branch[])[] {
  const lists = points.reduce<readonly (readonly (string | null)[])[]>(
    (so, point) =>
      so.flatMap((list) => [null, ...points].filter((from) => from !== point).map((from) => [...list, from])),
    [[]],
  );
  return lists.flatMap((feeders) => {
    const branches: Branch[] = [];
    const reached = new Set<string | null>([null]);
    for (let grown = true; grown; ) {
      grown = false;
      for (const [i, to] of points.entries()) {
        const from = feeders[i] ?? null;
        if (reached.has(to) || !reached.has(from)) continue;
        branches.push({ from, to });
        reached.add(to);
        grown = true;
      }
    }
    return branches.length === points.length ? [branches] : [];
  });
}

/** Every order of a list. */
export function ordersOf<T>(list: readonly T[]): readonly (readonly T[])[] {
  if (list.length === 0) return [[]];
  return list.flatMap((each, i) => ordersOf(list.filter((_, j) => j !== i)).map((rest) => [each, ...rest]));
}

/** Every way to put points, as the bits of a mask, into groups. */
export function groupingsOf(mask: number): readonly (readonly number[])[] {
  if (mask === 0) return [[]];
  const lowest = mask & -mask;
  const others = mask ^ lowest;
  const found: (readonly number[])[] = [];
  for (let rest = others; ; rest = (rest - 1) & others) {
    for (const groups of groupingsOf(others ^ rest)) found.push([lowest | rest, ...groups]);
    if (rest === 0) return found;
  }
}

export const feedsOf = (tree: readonly Branch[], root: string): Feed[] =>
  tree.map(({ from, to }) => ({ from: from ?? root, to }));

/** A wanted point joined on by itself. */
export const joinedOn = (from: Tap, { id, kind }: Point): Draft =>
  kind === 'fused-unit' ? { kind: 'fused-spur', from, unit: id, feeds: [] } : { kind: 'spur', from, to: id };

/** Where a unit beside an accessory goes, in words: 300 mm along its wall, on the side that is clear, no nearer to the wall's end than 100 mm. */
export function beside({ storeys, points }: Job, place: Place | undefined): Place | null {
  if (place === undefined || !('wall' in place)) return null;
  const wall = storeys.flatMap(({ walls }) => walls).find(({ id }) => id === place.wall);
  if (wall === undefined) return null;
  const longMm = Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]);
  const others = points.flatMap((point) =>
    point.place !== undefined &&
    'wall' in point.place &&
    point.place.wall === place.wall &&
    Math.abs(point.place.heightMm - place.heightMm) < 200
      ? [point.place.alongMm]
      : [],
  );
  const spots = [place.alongMm + 300, place.alongMm - 300].filter((mm) => mm >= 100 && mm <= longMm - 100);
  const alongMm = spots.find((mm) => others.every((other) => Math.abs(other - mm) >= 200)) ?? spots[0];
  return alongMm === undefined ? null : { ...place, alongMm };
}

/** Nearer to a leg's end than this nobody cuts it: its terminals serve. */
const FROM_END_MM = 300;

/**
 * Where a leg is cut, in mm of cable from its `from`: at the corners of its way, and on a straight stretch so far apart at the
 * most, but where it runs in a wall. A metre is what the search says that it tries; less is the finer sampling that it is held against.
 */
export function cutsOf(
  run: Run | undefined,
  { apartMm, allowances }: { readonly apartMm: number; readonly allowances: LengthAllowances },
): readonly number[] {
  if (run === undefined || run.lengthMm === null || run.routeMm === 0) return [];
  const cuts = new Set<number>();
  const { boardEndMm, accessoryEndMm } = allowances;
  const tailMm = run.from.kind === 'board' ? boardEndMm : accessoryEndMm;
  const perRouteMm = Math.max(0, run.lengthMm - run.endsMm) / run.routeMm;
  let passedMm = 0;
  for (const { lengthMm, medium } of run.segments) {
    const isInWall = medium === 'wall-chase' || medium === 'stud-cavity' || medium === 'through-wall';
    const pieces = isInWall ? 0 : Math.max(1, Math.ceil(lengthMm / apartMm));
    for (let i = 0; i < pieces; i += 1) {
      const routeMm = passedMm + (lengthMm * i) / pieces;
      cuts.add(Math.round(tailMm + routeMm * perRouteMm));
    }
    passedMm += lengthMm;
  }
  const lastMm = run.lengthMm - FROM_END_MM;
  return [...cuts].filter((mm) => mm >= FROM_END_MM && mm <= lastMm);
}

/** Whether somebody has followed a leg's way, or a person lets it be cut all the same. */
export function mayBeCut({ id, via, certainty }: Leg, allowed: ReadonlySet<string>): boolean {
  const word = certainty?.route ?? certainty?.via ?? 'seen';
  return allowed.has(id) || ((via?.length ?? 0) > 0 && (word === 'seen' || word === 'measured'));
}
