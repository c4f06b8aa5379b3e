import type { PlanPoint } from '../plan/plane.ts';
import { roomAt } from '../plan/surroundings.ts';
import {
  DEEPEST_JOIST_MM,
  drillableMm,
  HOLE_TO_NOTCH_MM,
  HOLES_APART_DIAMETERS,
  largestJoistHoleMm,
} from '../ways/joist-window.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { type JoistCrossing, joistCrossings } from './joist-size.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'tooLarge' | 'engineer' | 'zone' | 'spanUnknown' | 'depthUnknown';

/** Holes in joists are small enough for the joist, and where along it they may be. */
export const joistHole = rule<Message>({
  id: 'RT3',
  title: 'Holes in joists',
  source: 'Approved Document A; BS 5268-2; NHBC Standards 6.4',
  messages: {
    tooLarge: 'A hole of {actual} mm is more than a quarter of the joist’s depth ({limit} mm).',
    engineer: 'Joists of {actual} mm are deeper than {limit} mm: the guidance for holes does not reach them.',
    zone: 'Drill {hole} mm on the centre line, {from} to {to} mm from either support (0.25 to 0.40 of a span of {span} mm taken from the room), {apart} diameters apart, {clear} mm from any notch.',
    spanUnknown:
      'Drill {hole} mm on the centre line, 0.25 to 0.40 of the span from a support, {apart} diameters apart, {clear} mm from any notch; the span is not known.',
    depthUnknown: 'The depth of the joists is not known, so the largest hole is not either.',
  },
  remedies: {
    tooLarge: 'Drill smaller, or take the run along the joists.',
    engineer: 'Ask the maker of the joists or an engineer before drilling.',
    zone: 'Measure the true span; engineered and metal-web joists follow their maker only.',
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

function judged(facts: Facts, crossing: JoistCrossing): Omit<CheckResult<Message>, 'subjectId' | 'origin'> {
  const { floor, holeMm } = crossing;
  const depthMm = floor.joistDepthMm;
  if (depthMm === undefined) return { outcome: 'not-proven', messageId: 'depthUnknown' };
  if (depthMm > DEEPEST_JOIST_MM)
    return { outcome: 'decide', messageId: 'engineer', ...figures(depthMm, DEEPEST_JOIST_MM, 'mm') };
  const largestMm = largestJoistHoleMm(depthMm);
  if (holeMm > largestMm)
    return { outcome: 'decide', messageId: 'tooLarge', ...figures(holeMm, largestMm, 'mm') };
  const spanMm = spanByRoomMm(facts, crossing);
  const apart = { hole: holeMm, apart: HOLES_APART_DIAMETERS, clear: HOLE_TO_NOTCH_MM };
  const numbers = figures(holeMm, largestMm, 'mm', apart);
  if (spanMm === null) return { outcome: 'advice', messageId: 'spanUnknown', ...numbers };
  const [[fromMm, toMm]] = drillableMm({ fromMm: 0, toMm: spanMm });
  const named = { ...apart, span: spanMm, from: Math.round(fromMm), to: Math.round(toMm) };
  return { outcome: 'advice', messageId: 'zone', ...figures(holeMm, largestMm, 'mm', named) };
}

/** The room's extent along its joists: as far as a drawing tells, since joists may bear on walls beyond. */
function spanByRoomMm(facts: Facts, { segment, floor }: JoistCrossing): number | null {
  const room = roomAt(facts.plan, segment.storeyId, segment.from.at);
  if (!room || room.outline.length === 0 || floor.joistsRunDeg === undefined) return null;
  const angle = (floor.joistsRunDeg * Math.PI) / 180;
  const along = ([x, y]: PlanPoint) => x * Math.cos(angle) + y * Math.sin(angle);
  const reach = room.outline.map(along);
  return Math.round(Math.max(...reach) - Math.min(...reach));
}
