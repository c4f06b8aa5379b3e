import type { Plan } from '../plan/plan.ts';
import type { Run, RunEnd, Segment } from '../ways/run.ts';
import { between, directionOf, dot, isParallel, lengthOf, type Spot, spotOf } from '../ways/spot.ts';
import { channelSize, conduitSizeMm } from './containment-size.ts';
import type { Demand } from './demand.ts';
import { turnOf } from './turn.ts';
import type { Stretch } from './wall-stretches.ts';

/** Where a straight ends, and what is there: another straight goes on, a box closes it, or nothing does. */
interface Meeting {
  readonly runId: string;
  readonly at: Spot;
  readonly stretch: Stretch;
  /** The straight that the run goes on in there; null where it goes on in none. */
  readonly onto: Stretch | null;
  /** Whether the run leaves the straight there; else it comes into it. */
  readonly forward: boolean;
  readonly segments: readonly [Segment, Segment | undefined];
  /** What the run ends at there; null where it goes on. */
  readonly end: RunEnd | null;
}

/** What meets within this is at one place: the widest channel is 50, mm. Common practice, no source. */
const AT_MM = 60;

/**
 * Bends where channel or conduit turns, tees where a cable leaves others that go on, caps on channel that ends away from a
 * box, adaptors where conduit meets one: each once, however many cables go by. A fitting between two sizes is of the larger.
 */
export function fittingDemands(
  runs: readonly Run[],
  plan: Plan,
  stretches: readonly Stretch[],
): readonly Demand[] {
  const fitted = stretches.filter(isFitted);
  const meetings = meetingsOf(runs, fitted);
  return [...turns(meetings, plan), ...caps(meetings), ...adaptors(meetings)];
}

const isFitted = ({ containment }: Stretch): boolean =>
  containment === 'channel' || containment === 'conduit';

function meetingsOf(runs: readonly Run[], stretches: readonly Stretch[]): readonly Meeting[] {
  const stretchAt = new Map<string, Stretch>();
  for (const stretch of stretches)
    for (const { run, first, last } of stretch.straights)
      for (let index = first; index <= last; index++) stretchAt.set(`${run.id} ${index}`, stretch);
  return runs.flatMap((run) =>
    run.segments.flatMap((segment, index) => {
      const stretch = stretchAt.get(`${run.id} ${index}`);
      if (stretch === undefined) return [];
      const sides = [
        { step: -1, position: segment.from, end: run.from },
        { step: 1, position: segment.to, end: run.to },
      ];
      return sides.flatMap(({ step, position, end }): Meeting[] => {
        const next = run.segments[index + step];
        const found = stretchAt.get(`${run.id} ${index + step}`);
        if (found === stretch) return [];
        const onto = found?.containment === stretch.containment ? found : null;
        const at = spotOf(position);
        const meeting = { runId: run.id, at, stretch, onto, forward: step > 0 };
        return [{ ...meeting, segments: [segment, next], end: next === undefined ? end : null }];
      });
    }),
  );
}

/** The same meetings, each place once, with every run that goes by. */
function atEachPlace(
  meetings: readonly Meeting[],
  placeOf: (meeting: Meeting) => string,
): readonly {
  readonly all: readonly Meeting[];
  readonly first: Meeting;
  readonly causes: readonly string[];
}[] {
  const byPlace = new Map<string, Meeting[]>();
  for (const meeting of meetings) {
    const place = placeOf(meeting);
    byPlace.set(place, [...(byPlace.get(place) ?? []), meeting]);
  }
  return [...byPlace.values()].flatMap((all) => {
    const [first] = all;
    const causes = [...new Set(all.map(({ runId }) => runId))].toSorted();
    return first === undefined ? [] : [{ all, first, causes }];
  });
}

function part(item: string, causes: readonly string[]): Demand {
  return { item, unit: 'each', group: 'containment', measured: 1, causes };
}

/** Names stretches by the runs and segments they are made of. */
const nameOf = ({ straights }: Stretch): string =>
  straights.map(({ run, first }) => `${run.id} ${first}`).join(', ');

/** Where straights meet and not in one line: by the first run that turns there, with all that meet. */
interface Corner {
  readonly first: Meeting;
  readonly arms: ReadonlySet<Stretch>;
  readonly causes: readonly string[];
}

function turns(meetings: readonly Meeting[], plan: Plan): readonly Demand[] {
  const isOnward = ({ stretch, onto }: Meeting): boolean => onto !== null && isInLine(stretch, onto);
  const onward = new Set(meetings.filter(isOnward).map(({ stretch, at }) => endName(stretch, at)));
  const turning = meetings.filter(
    (meeting) => meeting.forward && meeting.onto !== null && !isOnward(meeting),
  );
  return cornersOf(turning).map(({ first, arms, causes }) => {
    const { stretch, at, segments } = first;
    const size = [...arms].map(sizeOf).toSorted((a, b) => sectionOf(b) - sectionOf(a))[0];
    const goesOnThere = (arm: Stretch) => endAt(arm, at) === null || onward.has(endName(arm, at));
    const isTee = arms.size > 2 || [...arms].some(goesOnThere);
    if (isTee) return part(`${stretch.containment}-tee-${size}`, causes);
    const turn = stretch.containment === 'conduit' ? 'flat' : turnOf(plan, segments);
    return part(`${stretch.containment}-${turn === 'flat' ? '' : `${turn}-`}bend-${size}`, causes);
  });
}

/** Turns that share a straight at one place are one corner. */
function cornersOf(turning: readonly Meeting[]): readonly Corner[] {
  const corners: Corner[] = [];
  for (const meeting of turning) {
    const arms = [meeting.stretch, meeting.onto].filter((arm) => arm !== null);
    const index = corners.findIndex(
      (corner) =>
        arms.some((arm) => corner.arms.has(arm)) && lengthOf(between(corner.first.at, meeting.at)) <= AT_MM,
    );
    const known = corners[index] ?? { first: meeting, arms: new Set(), causes: [] };
    const corner: Corner = {
      first: known.first,
      arms: new Set([...known.arms, ...arms]),
      causes: [...new Set([...known.causes, meeting.runId])].toSorted(),
    };
    if (index < 0) corners.push(corner);
    else corners[index] = corner;
  }
  return corners;
}

function isInLine(a: Stretch, b: Stretch): boolean {
  const [one, other] = [directionOf(...a.ends), directionOf(...b.ends)];
  return one === null || other === null || isParallel(one, other);
}

/** Which end of a stretch is at this spot; null where it is in its middle. Lines drawn beside each other end beside each other. */
function endAt({ ends }: Stretch, at: Spot): 0 | 1 | null {
  const way = directionOf(...ends);
  if (way === null) return 0;
  const fromStartMm = dot(between(ends[0], at), way);
  const toEndMm = lengthOf(between(...ends)) - fromStartMm;
  if (fromStartMm <= toEndMm) return fromStartMm <= AT_MM ? 0 : null;
  return toEndMm <= AT_MM ? 1 : null;
}

/** Names a stretch's end. */
const endName = (stretch: Stretch, at: Spot): string => `${nameOf(stretch)} | ${endAt(stretch, at)}`;

/** One cap where every cable that is in the end goes on out of it. A cable that leaves in the middle of others asks for none. */
function caps(meetings: readonly Meeting[]): readonly Demand[] {
  const ending = meetings.filter(
    ({ stretch, at }) => stretch.containment === 'channel' && endAt(stretch, at) !== null,
  );
  return atEachPlace(ending, ({ stretch, at }) => endName(stretch, at))
    .filter(({ all }) => all.every(isOpen))
    .map(({ first, causes }) => part(`channel-end-${sizeOf(first.stretch)}`, causes));
}

/** What leads into channel that is there has no open end. */
const isOpen = ({ onto, end, segments: [, next] }: Meeting): boolean =>
  onto === null && end === null && next?.inChannelOf === undefined;

function adaptors(meetings: readonly Meeting[]): readonly Demand[] {
  const atBoxes = meetings.filter(({ stretch, end }) => stretch.containment === 'conduit' && end !== null);
  const placeOf = ({ stretch, end }: Meeting) => `${nameOf(stretch)} | ${end?.pointId ?? end?.nodeId}`;
  return atEachPlace(atBoxes, placeOf).map(({ first, causes }) =>
    part(`conduit-adaptor-${sizeOf(first.stretch)}`, causes),
  );
}

const sizeOf = ({ containment, cables }: Stretch): string =>
  containment === 'channel' ? channelSize(cables) : String(conduitSizeMm(cables));

/** Orders sizes of one kind: by the product of the sides, or by the one width that is told. */
const sectionOf = (size: string): number =>
  size.split('x').reduce((product, sideMm) => product * Number(sideMm), 1);
