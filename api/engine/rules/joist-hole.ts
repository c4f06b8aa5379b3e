import { joistsInWords, placeWords } from '../ways/cut-words.ts';
import type { PlacedHole } from '../ways/holes-placed.ts';
import {
  DEEPEST_JOIST_MM,
  deepestNotchMm,
  drillableMm,
  HOLE_TO_NOTCH_MM,
  HOLES_APART_DIAMETERS,
  isDeepEnoughToDrill,
  type JoistCut,
  largestJoistHoleMm,
  notchableMm,
} from '../ways/joist-window.ts';
import { roomBeside } from '../ways/room-beside.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { isNotched, type JoistCrossing, joistCrossings } from './joist-size.ts';
import { type CheckResult, rule } from './rule.ts';

type Message =
  | 'tooLarge'
  | 'engineer'
  | 'misplaced'
  | 'shallow'
  | 'shallowAssumed'
  | 'overSupport'
  | 'spanAssumed'
  | 'zone'
  | 'notch'
  | 'spanUnknown'
  | 'depthUnknown';

const windows =
  'of a span of {span} mm; holes are allowed {from} to {to} mm from either support (0.25 to 0.40 of it), notches {notchFrom} to {notchTo} mm (0.07 to 0.25).';

const notchWindow =
  'of a span of {span} mm; notches are allowed {notchFrom} to {notchTo} mm from either support (0.07 to 0.25 of it).';

/** Holes in joists are small enough for the joist, and where along it they may be. */
export const joistHole = rule<Message>({
  id: 'RT3',
  title: 'Holes in joists',
  source: 'Approved Document A; BS 5268-2; NHBC Standards 6.4',
  messages: {
    tooLarge: 'A hole of {actual} mm is more than a quarter of the joist’s depth ({limit} mm).',
    engineer: 'Joists of {actual} mm are deeper than {limit} mm: the guidance for holes does not reach them.',
    misplaced: `The run goes through {joists} in {room} where neither hole nor notch is allowed: {place}, ${windows}`,
    shallow: `The run goes through {joists} in {room} that are too shallow for a hole with 50 mm over and under it, where no notch is allowed either: {place}, ${notchWindow}`,
    shallowAssumed: `The run goes through {joists} in {room} that are too shallow for a hole with 50 mm over and under it, where no notch would be allowed either, if they bear where it is assumed: {place}, ${notchWindow}`,
    overSupport: 'The run goes through {joists} in {room} over what they bear on, where they may not be cut.',
    spanAssumed: `The run goes through {joists} in {room} where neither hole nor notch would be allowed, if they bear where it is assumed: {place}, ${windows}`,
    zone: 'Drill {joists} in {room} {hole} mm on the centre line, {place}: {from} to {to} mm from either support is allowed (0.25 to 0.40 of a span of {span} mm), {apart} diameters apart, {clear} mm from any notch.',
    notch:
      'Notch {joists} in {room} {notch} mm deep at most, {place}, with a steel plate over each: {notchFrom} to {notchTo} mm from either support is allowed (0.07 to 0.25 of a span of {span} mm), {clear} mm from any hole.',
    spanUnknown:
      'Drill {hole} mm on the centre line, 0.25 to 0.40 of the span from a support, {apart} diameters apart, {clear} mm from any notch; the span is not known.',
    depthUnknown: 'The depth of the joists is not known, so the largest hole is not either.',
  },
  remedies: {
    tooLarge: 'Drill smaller, or take the run along the joists.',
    engineer: 'Ask the maker of the joists or an engineer before drilling.',
    misplaced: 'Cross the joists further along them, or ask an engineer.',
    shallow: 'Cross the joists nearer to what they bear on, or run along them and pass beneath.',
    shallowAssumed: 'Lift a board and see where the joists bear.',
    overSupport: 'Cross the joists further along them, or pass beneath them.',
    spanAssumed: 'Lift a board and see where the joists bear.',
    zone: 'Measure the true span; engineered and metal-web joists follow their maker only.',
    notch: 'Measure the true span; engineered and metal-web joists follow their maker only.',
    spanUnknown: 'Measure the span; engineered and metal-web joists follow their maker only.',
    depthUnknown: 'Lift a board and measure the joists.',
  },
  couldFail: false,
  check: (facts) =>
    joistCrossings(facts).map((crossing) => ({
      subjectId: crossing.run.id,
      origin: 'scheme' as const,
      ...judged(facts, crossing),
    })),
});

type Judged = Omit<CheckResult<Message>, 'subjectId' | 'origin'>;

function judged(facts: Facts, crossing: JoistCrossing): Judged {
  const { floor, holeMm } = crossing;
  const depthMm = floor.joistDepthMm;
  if (depthMm === undefined) return { outcome: 'not-proven', messageId: 'depthUnknown' };
  if (depthMm > DEEPEST_JOIST_MM)
    return { outcome: 'decide', messageId: 'engineer', ...figures(depthMm, DEEPEST_JOIST_MM, 'mm') };
  const largestMm = largestJoistHoleMm(depthMm);
  if (holeMm > largestMm && !isNotched(crossing.run))
    return { outcome: 'decide', messageId: 'tooLarge', ...figures(holeMm, largestMm, 'mm') };
  return placed(facts, crossing, largestMm);
}

/** What is said of a run by where its holes come, the gravest first. */
function placed(facts: Facts, { run, floor, holeMm }: JoistCrossing, largestMm: number): Judged {
  const holes = run.cuts.flatMap((cuts) => cuts.holes);
  const those = (judged: JoistCut) => holes.filter((hole) => hole.judged === judged);
  const numbers = (own: readonly PlacedHole[]) =>
    figures(holeMm, largestMm, 'mm', {
      hole: holeMm,
      apart: HOLES_APART_DIAMETERS,
      clear: HOLE_TO_NOTCH_MM,
      ...valuesOf(facts, own),
    });
  const [notAllowed, notches] = [those('neither'), those('notch')];
  const seen = notAllowed.filter(({ isSpanAssumed }) => !isSpanAssumed);
  const within = seen.filter(({ spanMm }) => spanMm !== null);
  const isShallow = !isDeepEnoughToDrill(floor.joistDepthMm ?? 0, holeMm);
  if (within.length > 0)
    return { outcome: 'decide', messageId: isShallow ? 'shallow' : 'misplaced', ...numbers(within) };
  if (seen.length > 0) return { outcome: 'decide', messageId: 'overSupport', ...numbers(seen) };
  if (notAllowed.length > 0)
    return {
      outcome: 'not-proven',
      messageId: isShallow ? 'shallowAssumed' : 'spanAssumed',
      ...numbers(notAllowed),
    };
  if (notches.length > 0) return { outcome: 'advice', messageId: 'notch', ...numbers(notches) };
  const drilled = those('hole');
  return drilled.length === 0 || those('unknown').length > 0
    ? { outcome: 'advice', messageId: 'spanUnknown', ...numbers([]) }
    : { outcome: 'advice', messageId: 'zone', ...numbers(drilled) };
}

/** Where holes of one kind are, by the shortest span among them, whose windows are the narrowest. */
function valuesOf({ plan }: Facts, holes: readonly PlacedHole[]): Readonly<Record<string, string | number>> {
  const [first] = holes;
  if (first === undefined) return {};
  const spans = holes.flatMap(({ spanMm }) => spanMm ?? []);
  const span = { fromMm: 0, toMm: Math.min(...spans) };
  const [[fromMm, toMm], [notchFromMm, notchToMm]] = [drillableMm(span)[0], notchableMm(span)[0]];
  const rooms = [...new Set(holes.map(({ storeyId, at }) => nameOf(plan, storeyId, at)))].toSorted();
  return {
    joists: joistsInWords(holes.length),
    place: placeWords(plan, holes),
    room: rooms.join(' and '),
    notch: first.joistDepthMm === null ? 0 : Math.floor(deepestNotchMm(first.joistDepthMm)),
    ...(spans.length === 0
      ? {}
      : {
          span: Math.round(span.toMm),
          from: Math.round(fromMm),
          to: Math.round(toMm),
          notchFrom: Math.round(notchFromMm),
          notchTo: Math.round(notchToMm),
        }),
  };
}

/** The room over a hole by its name; the storey where it is in none. */
function nameOf(plan: Facts['plan'], storeyId: string, at: PlacedHole['at']): string {
  const room = roomBeside(plan, storeyId, at, [1, 0]);
  return room?.room.name ?? plan.storeyById.get(storeyId)?.storey.name ?? storeyId;
}
