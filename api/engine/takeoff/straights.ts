import type { Containment } from '#model/cable.ts';
import type { Plan } from '../plan/plan.ts';
import type { Position } from '../plan/plane.ts';
import type { Run, Segment } from '../ways/run.ts';
import { liesInVoid } from '../ways/segment.ts';
import { between, directionOf, goesOn, lengthOf, type Spot, spotOf } from '../ways/spot.ts';
import { containmentOf } from './containment-of.ts';

/** What one run lays without a turn: one tube, one line of channel, one chase. Segments follow one another where the medium changes and the way does not. */
export interface Straight {
  readonly run: Run;
  /** Its segments, first and last, as places in the run. */
  readonly first: number;
  readonly last: number;
  readonly containment: Containment;
  /** The tube or channel that it shares with other runs; null: its own. */
  readonly bundle: string | null;
  readonly from: Spot;
  readonly to: Spot;
  /** Within the room's height: what runs on into a void is left out. */
  readonly lengthMm: number;
  /** Ends that lead on into a floor or ceiling void, 0 to 2. */
  readonly voidEnds: number;
}

/** A way that goes on somewhere else than it came to is not one way, mm. */
const TOUCHING_MM = 1;

/** Which stretches are looked at, in which house. */
interface Picked {
  readonly plan: Plan;
  readonly isWanted: (segment: Segment) => boolean;
  /** Whether others lie in the tube or channel of this name. */
  readonly isShared: (bundle: string) => boolean;
}

/** The straights of a run that a test picks, in its order. */
export function straightsOfRun(run: Run, { plan, isWanted, isShared }: Picked): readonly Straight[] {
  const straights: Straight[] = [];
  for (const [index, segment] of run.segments.entries()) {
    if (!isWanted(segment)) continue;
    const bundle = segment.bundle !== null && isShared(segment.bundle) ? segment.bundle : null;
    const next = { ...straightOf(run, index, segment, plan), bundle };
    const before = straights.at(-1);
    if (before?.last === index - 1 && isOneWith(before, next)) straights.splice(-1, 1, joined(before, next));
    else straights.push(next);
  }
  return straights;
}

function isOneWith(before: Straight, next: Straight): boolean {
  if (before.containment !== next.containment || before.bundle !== next.bundle) return false;
  if (lengthOf(between(before.to, next.from)) > TOUCHING_MM) return false;
  const [came, goes] = [directionOf(before.from, before.to), directionOf(next.from, next.to)];
  return came === null || goes === null || goesOn(came, goes);
}

function joined(before: Straight, next: Straight): Straight {
  return {
    ...before,
    last: next.last,
    to: next.to,
    lengthMm: before.lengthMm + next.lengthMm,
    voidEnds: Math.min(2, before.voidEnds + next.voidEnds),
  };
}

function straightOf(run: Run, index: number, segment: Segment, plan: Plan): Omit<Straight, 'bundle'> {
  const ceilingMm = plan.storeyById.get(segment.from.storeyId)?.storey.heightMm ?? Number.POSITIVE_INFINITY;
  const leadsOn = (end: Position, next: Segment | undefined) => leadsIntoVoid(segment, end, next, ceilingMm);
  return {
    run,
    first: index,
    last: index,
    containment: containmentOf(segment),
    ...withinRoom(segment, ceilingMm),
    voidEnds:
      Number(leadsOn(segment.from, run.segments[index - 1])) +
      Number(leadsOn(segment.to, run.segments[index + 1])),
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

/** A stretch up or down a wall as far as the room's floor and ceiling; any other whole. */
function withinRoom(segment: Segment, ceilingMm: number): Pick<Straight, 'from' | 'to' | 'lengthMm'> {
  const { from, to } = segment;
  const isPlumb = segment.direction === 'vertical' && from.storeyId === to.storeyId;
  if (!isPlumb || liesInVoid(segment))
    return { from: spotOf(from), to: spotOf(to), lengthMm: segment.lengthMm };
  const inRoom = (heightMm: number) => Math.min(Math.max(heightMm, 0), ceilingMm);
  const [fromMm, toMm] = [inRoom(from.heightMm), inRoom(to.heightMm)];
  return { from: atHeight(from, fromMm), to: atHeight(to, toMm), lengthMm: Math.abs(fromMm - toMm) };
}

/** The spot of a position, moved up or down to this height above its floor. */
const atHeight = (position: Position, heightMm: number): Spot =>
  spotOf({ ...position, levelMm: position.levelMm + heightMm - position.heightMm });
