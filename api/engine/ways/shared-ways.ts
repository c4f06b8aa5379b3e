import { distanceMm } from '../plan/plane.ts';
import { remembered } from '../plan/remembered.ts';
import { BESIDE_MM } from './beside-in-walls.ts';
import type { WhyApart } from './chase-slots.ts';
import { liftedBoards } from './lifted-boards.ts';
import type { Run, Segment } from './run.ts';

/** What one new cable has in common with another of the same scheme; at least one of it is more than nought. */
export interface SharedWay {
  /** The other cable. */
  readonly runId: string;
  /** How far they lie beside each other in one chase, cut and filled once; mm. */
  readonly oneChaseMm: number;
  /** How far they are chased into one wall beside each other, each in a chase of its own; mm. */
  readonly ownChasesMm: number;
  /** Why these have a chase each though one might do; absent: somebody drew one of them otherwise, or there are none. */
  readonly whyApart?: WhyApart;
  /** How far they lie in one channel or tube on the surface, and in channels of their own beside each other; mm. */
  readonly oneChannelMm: number;
  readonly ownChannelsMm: number;
  /** Joists that both pass at one place by one hole, and by a hole for each. */
  readonly jointHoles: number;
  readonly ownHoles: number;
  /** Walls that both go through at one place by one hole, and by a hole for each. */
  readonly jointWallHoles: number;
  readonly ownWallHoles: number;
  /** Places where the floor comes up once for both. */
  readonly boards: number;
}

type Shares = Omit<SharedWay, 'runId' | 'whyApart'>;

/** A shorter way together is not worth a word, mm. */
const WORTH_SAYING_MM = 100;

/**
 * What the new cables of a scheme share, by the id of each that shares anything; the others in the order of the runs. Two cables
 * lie in one channel or hole where somebody said so, by one name of both (`bundle`), in one chase also where that carries what both
 * must; otherwise what runs beside another is counted for each, and is said to be.
 */
export const sharedWays = remembered((runs: readonly Run[]): ReadonlyMap<string, readonly SharedWay[]> => {
  const boards = boardsByPair(runs);
  const shared = new Map<string, SharedWay[]>();
  const note = (id: string, way: SharedWay): void => {
    const own = shared.get(id) ?? [];
    shared.set(id, own);
    own.push(way);
  };
  for (const [index, run] of runs.entries())
    for (const other of runs.slice(index + 1)) {
      const shares = sharesOf(run, other, boards.get(pairName(run.id, other.id)) ?? 0);
      if (Object.values(shares).every((amount) => amount === 0)) continue;
      const why = run.chasedApart?.find(({ runId }) => runId === other.id)?.why;
      const told = why === undefined || shares.ownChasesMm === 0 ? shares : { ...shares, whyApart: why };
      note(run.id, { runId: other.id, ...told });
      note(other.id, { runId: run.id, ...told });
    }
  const placeOf = new Map(runs.map(({ id }, index) => [id, index]));
  const inOrder = (a: SharedWay, b: SharedWay): number =>
    (placeOf.get(a.runId) ?? 0) - (placeOf.get(b.runId) ?? 0);
  return new Map([...shared].map(([id, ways]) => [id, ways.toSorted(inOrder)]));
});

const pairName = (a: string, b: string): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

function boardsByPair(runs: readonly Run[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { runIds } of liftedBoards(runs))
    for (const [index, id] of runIds.entries())
      for (const other of runIds.slice(index + 1))
        counts.set(pairName(id, other), (counts.get(pairName(id, other)) ?? 0) + 1);
  return counts;
}

function sharesOf(run: Run, other: Run, boards: number): Shares {
  const sum = { oneChaseMm: 0, ownChasesMm: 0, oneChannelMm: 0, ownChannelsMm: 0 };
  const count = { jointHoles: 0, ownHoles: 0, jointWallHoles: 0, ownWallHoles: 0 };
  for (const [index, segment] of run.segments.entries())
    for (const beside of other.segments) {
      if (segment.medium !== beside.medium || segment.wallId !== beside.wallId) continue;
      const isOne = segment.bundle !== null && segment.bundle === beside.bundle;
      if (segment.medium === 'through-wall') {
        if (isNear(segment, beside)) count[isOne ? 'jointWallHoles' : 'ownWallHoles'] += 1;
        continue;
      }
      const along = besideMm(segment, beside);
      if (along === null) continue;
      const lengthMm = along[1] - along[0];
      if (segment.medium === 'wall-chase') sum[isOne ? 'oneChaseMm' : 'ownChasesMm'] += lengthMm;
      if (segment.medium === 'surface-channel') sum[isOne ? 'oneChannelMm' : 'ownChannelsMm'] += lengthMm;
      count[isOne ? 'jointHoles' : 'ownHoles'] += holesBetween(run, index, along);
    }
  return { ...worthSaying(sum), ...count, boards };
}

const worthSaying = <Sums extends Record<string, number>>(sums: Sums): Sums =>
  Object.fromEntries(Object.entries(sums).map(([name, mm]) => [name, mm < WORTH_SAYING_MM ? 0 : mm])) as Sums;

/** Whether two holes through a wall are at one place. */
const isNear = (a: Segment, b: Segment): boolean => {
  const middle = ({ from, to }: Segment) => [
    (from.at[0] + to.at[0]) / 2,
    (from.at[1] + to.at[1]) / 2,
    (from.levelMm + to.levelMm) / 2,
  ];
  const [one, other] = [middle(a), middle(b)];
  return Math.hypot(...one.map((mm, axis) => mm - (other[axis] ?? 0))) <= BESIDE_MM;
};

/** From where to where of one stretch another lies beside it, mm from its start; null where it does nowhere. */
function besideMm(segment: Segment, beside: Segment): readonly [number, number] | null {
  const spots = [segment.from, segment.to, beside.from, beside.to].map(({ at, levelMm }) => [
    at[0] - segment.from.at[0],
    at[1] - segment.from.at[1],
    levelMm - segment.from.levelMm,
  ]);
  const [, end = [], ...others] = spots;
  const lengthMm = Math.hypot(...end);
  if (lengthMm < 1) return null;
  const alongMm = (spot: readonly number[]): number =>
    spot.reduce((total, mm, axis) => total + (mm * (end[axis] ?? 0)) / lengthMm, 0);
  const offMm = (spot: readonly number[]): number => {
    const mm = alongMm(spot);
    return Math.hypot(...spot.map((each, axis) => each - (mm * (end[axis] ?? 0)) / lengthMm));
  };
  if (others.some((spot) => offMm(spot) > BESIDE_MM)) return null;
  const places = others.map(alongMm);
  const [fromMm, toMm] = [Math.max(0, Math.min(...places)), Math.min(lengthMm, Math.max(...places))];
  return toMm - fromMm < 1 ? null : [fromMm, toMm];
}

/** The joists that a stretch of a run passes between two places on it. */
function holesBetween(run: Run, index: number, [fromMm, toMm]: readonly [number, number]): number {
  const start = run.segments[index]?.from.at;
  if (start === undefined) return 0;
  return (run.cuts[index]?.holes ?? []).filter(({ at }) => {
    const mm = distanceMm(start, at);
    return mm >= fromMm && mm <= toMm;
  }).length;
}
