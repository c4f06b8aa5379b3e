import type { Cable, Containment } from '#model/cable.ts';
import type { Plan } from '../plan/plan.ts';
import type { Position } from '../plan/plane.ts';
import { rememberedOfTwo } from '../plan/remembered.ts';
import type { Run, Segment } from '../ways/run.ts';
import { liesInVoid } from '../ways/segment.ts';
import { lengthRatios } from './run-length.ts';

/** A length of wall or tube with the cables in it; cables that share one are in it together. */
export interface Stretch {
  readonly medium: Segment['medium'];
  readonly containment: Containment;
  /** Within the room's height: what runs on into a void is left out. */
  readonly lengthMm: number;
  readonly lowRatio: number;
  readonly highRatio: number;
  readonly direction: Segment['direction'];
  /** Ends that lead on into a floor or ceiling void, 0 to 2. */
  readonly voidEnds: number;
  readonly cables: readonly Cable[];
  /** Sorted. */
  readonly runIds: readonly string[];
}

/** Stretches of every run that a test picks, shared ones counted once, in the order of the runs. */
export function stretchesOf(
  runs: readonly Run[],
  plan: Plan,
  isWanted: (segment: Segment) => boolean,
): readonly Stretch[] {
  const single = everyStretch(runs, plan).filter(({ segment }) => isWanted(segment));
  const shared = new Map<string, Stretch[]>();
  for (const { segment, stretch } of single) {
    if (segment.bundle === null) continue;
    const key = `${segment.bundle} ${stretch.medium} ${stretch.containment} ${stretch.direction}`;
    shared.set(key, [...(shared.get(key) ?? []), stretch]);
  }
  const alone = single.filter(({ segment }) => segment.bundle === null).map(({ stretch }) => stretch);
  return [...alone, ...[...shared.values()].flatMap((together) => sharedStretch(together) ?? [])];
}

/** Every segment of every run as a stretch of its own. */
const everyStretch = rememberedOfTwo((runs: readonly Run[], plan: Plan) =>
  runs.flatMap((run) =>
    run.segments.map((segment, index) => ({ segment, stretch: stretchOf(run, index, segment, plan) })),
  ),
);

function stretchOf(run: Run, index: number, segment: Segment, plan: Plan): Stretch {
  const ceilingMm = plan.storeyById.get(segment.from.storeyId)?.storey.heightMm ?? Number.POSITIVE_INFINITY;
  const leadsOn = (end: Position, next: Segment | undefined) => leadsIntoVoid(segment, end, next, ceilingMm);
  return {
    medium: segment.medium,
    containment: segment.containment,
    lengthMm: lengthInRoomMm(segment, ceilingMm),
    ...lengthRatios(run),
    direction: segment.direction,
    voidEnds:
      Number(leadsOn(segment.from, run.segments[index - 1])) +
      Number(leadsOn(segment.to, run.segments[index + 1])),
    cables: [run.cable],
    runIds: [run.id],
  };
}

/** A stretch in a void leads nowhere further, nor does one whose tube is drawn on into the void already. */
function leadsIntoVoid(
  segment: Segment,
  end: Position,
  next: Segment | undefined,
  ceilingMm: number,
): boolean {
  if (liesInVoid(segment)) return false;
  if (end.heightMm < 0 || end.heightMm > ceilingMm) return true;
  return next !== undefined && liesInVoid(next) && next.containment !== segment.containment;
}

function lengthInRoomMm(segment: Segment, ceilingMm: number): number {
  const { from, to } = segment;
  const isPlumb = segment.direction === 'vertical' && from.storeyId === to.storeyId;
  if (!isPlumb || liesInVoid(segment)) return segment.lengthMm;
  const inRoom = (heightMm: number) => Math.min(Math.max(heightMm, 0), ceilingMm);
  return Math.abs(inRoom(from.heightMm) - inRoom(to.heightMm));
}

/** Several cables in one tube: as long as the longest of them lies in it. */
function sharedStretch(together: readonly Stretch[]): Stretch | null {
  const byRun = new Map<string, Stretch[]>();
  for (const stretch of together) {
    const key = stretch.runIds.join(' ');
    byRun.set(key, [...(byRun.get(key) ?? []), stretch]);
  }
  const ofRuns = [...byRun.values()].map((parts) => ({
    lengthMm: parts.reduce((sumMm, part) => sumMm + part.lengthMm, 0),
    voidEnds: parts.reduce((ends, part) => ends + part.voidEnds, 0),
    first: parts[0],
  }));
  const longest = ofRuns.toSorted((a, b) => b.lengthMm - a.lengthMm)[0];
  if (longest?.first === undefined) return null;
  return {
    ...longest.first,
    lengthMm: longest.lengthMm,
    voidEnds: Math.max(...ofRuns.map((run) => run.voidEnds)),
    lowRatio: Math.min(...together.map((part) => part.lowRatio)),
    highRatio: Math.max(...together.map((part) => part.highRatio)),
    cables: ofRuns.flatMap((run) => run.first?.cables ?? []),
    runIds: [...byRun.keys()].toSorted(),
  };
}
