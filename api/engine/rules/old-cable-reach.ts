import type { NetworkNode } from '../circuit/network.ts';
import type { Position } from '../plan/plane.ts';
import { toldPosition } from '../ways/node-positions.ts';
import type { Mount } from '../ways/route.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { freeFromCut, type KeptCable, keptCables, tailMm } from './kept-cable.ts';
import { knownWayMm } from './kept-way.ts';
import { type CheckResult, rule } from './rule.ts';
import { nameOf } from './wiring.ts';

type Message = 'reaches' | 'tooShort' | 'outOfReach' | 'wayUnknown' | 'routeAssumed' | 'unknown';

/** Old cable whose cut end is brought into a new accessory is long enough to get there. */
export const oldCableReach = rule<Message>({
  id: 'CN3',
  title: 'Reach of the old cable',
  source: 'common practice; BS 7671 522.8',
  messages: {
    reaches:
      'The old cable from {from} can be freed over {actual} mm from its cut end; {limit} mm reach {to} with a tail.',
    tooShort:
      'The old cable from {from} ends {short} m short of {to}: {actual} mm of it stay, {limit} mm would be wanted even straight.',
    outOfReach:
      'The old cable from {from} ends {short} m short of {to}: {actual} mm can be freed from its cut end back to where it is held, {limit} mm would be wanted along the building.',
    wayUnknown:
      'No way from where the old cable from {from} is held to {to} is drawn: {actual} mm can be freed, and {limit} mm would be wanted square to the walls, which the way may well exceed.',
    routeAssumed:
      'The way of the old cable from {from} is assumed, so whether its cut end reaches {to} is not shown.',
    unknown:
      'The length of the old cable from {from}, or a place at one of its ends, is not known, so whether it reaches {to} is not shown.',
  },
  remedies: {
    tooShort: 'Cut further along, or join new cable on there.',
    outOfReach: 'Cut further along, join new cable on there, or set the accessory on the cable’s way.',
    wayUnknown: 'Measure the way in the building before the day, and price a joint as the other way.',
    routeAssumed: 'Trace the cable before the day, and price a joint as the other way.',
    unknown: 'Trace and measure the cable before the day, and price a joint as the other way.',
  },
  couldFail: true,
  applies: (facts) => keptCables(facts).length > 0,
  check: (facts) => {
    const { plan, proposed: network, foundRuns, allowances } = facts;
    // A place that is only guessed for what a connection brings along proves nothing.
    const told = (node: NetworkNode) => toldPosition({ plan, network, foundRuns, allowances }, node);
    return keptCables(facts).map((kept) => ({
      subjectId: kept.edge.id,
      origin: 'scheme',
      ...judged(facts, kept, { anchor: told(kept.anchor), target: told(kept.target) }),
    }));
  },
});

type Judgement = Omit<CheckResult<Message>, 'subjectId' | 'origin'>;

function judged(
  facts: Facts,
  kept: KeptCable,
  { anchor, target }: { anchor: Position | null; target: Position | null },
): Judgement {
  const values = { from: nameOf(facts, kept.anchor.id), to: nameOf(facts, kept.target.id) };
  const { lengthMm } = kept.edge;
  if (lengthMm === null || !anchor || !target) return { outcome: 'not-proven', messageId: 'unknown', values };
  // Whatever way it lies, no cable reaches further than straight.
  const straightMm =
    straightBetweenMm(anchor, target) +
    tailMm(kept.anchor, facts.allowances) +
    tailMm(kept.target, facts.allowances);
  if (straightMm > lengthMm) return short('tooShort', { haveMm: lengthMm, wantedMm: straightMm, values });
  const run = facts.foundRuns.get(kept.edge.legId ?? '');
  if (!run || run.segments.some(({ certainty }) => certainty === 'assumed'))
    return { outcome: 'not-proven', messageId: 'routeAssumed', values };
  const free = freeFromCut(kept, run, facts.allowances);
  if (free === null) return { outcome: 'not-proven', messageId: 'unknown', values };
  const mountOf = ({ pointId }: NetworkNode): Mount => facts.plan.pointById.get(pointId ?? '')?.mount ?? null;
  const mounts = { fromMount: mountOf(kept.anchor), toMount: mountOf(kept.target) };
  const wayMm = knownWayMm(facts, run, { freed: free, target, ...mounts });
  const squareMm = squareBetweenMm(facts, free.from, target);
  const wantedMm = Math.max(squareMm, wayMm ?? 0) + tailMm(kept.target, facts.allowances);
  if (wantedMm - free.freeMm > SLIP_MM) return short('outOfReach', { haveMm: free.freeMm, wantedMm, values });
  const numbers = figures(free.freeMm, wantedMm, 'mm', values);
  const doubtMm = wayMm === null ? (squareMm * facts.allowances.assumedPercent) / 100 : 0;
  return wantedMm + doubtMm - free.freeMm > SLIP_MM
    ? { ...numbers, outcome: 'not-proven', messageId: 'wayUnknown' }
    : { ...numbers, outcome: 'passes', messageId: 'reaches' };
}

/** Less than this is no length that anybody measures. */
const SLIP_MM = 0.01;

interface Shortfall {
  readonly haveMm: number;
  readonly wantedMm: number;
  readonly values: Readonly<Record<string, string>>;
}

function short(messageId: 'tooShort' | 'outOfReach', { haveMm, wantedMm, values }: Shortfall): Judgement {
  // Rounded up, so that nothing is ever "0 m short".
  const shortM = Math.ceil((wantedMm - haveMm) / 10) / 100;
  const numbers = figures(haveMm, wantedMm, 'mm', { ...values, short: shortM });
  return { outcome: 'fails', messageId, ...numbers };
}

function straightBetweenMm(a: Position, b: Position): number {
  return Math.hypot(b.at[0] - a.at[0], b.at[1] - a.at[1], b.levelMm - a.levelMm);
}

/** Along the building: square to the wall of the second place (to the plan where it is on none), and upright. */
function squareBetweenMm({ plan }: Facts, a: Position, b: Position): number {
  const [x, y] = plan.wallById.get(b.onWall?.wallId ?? '')?.direction ?? [1, 0];
  const [dx, dy] = [b.at[0] - a.at[0], b.at[1] - a.at[1]];
  return Math.abs(dx * x + dy * y) + Math.abs(dy * x - dx * y) + Math.abs(b.levelMm - a.levelMm);
}
