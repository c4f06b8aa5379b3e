import type { End, Waypoint } from '#model/cable.ts';
import type { Scheme } from '#model/scheme.ts';
import type { NetworkNode } from '../../circuit/network.ts';
import type { Worked } from '../../connections/worked.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Mount } from '../../ways/route.ts';
import type { Run, RunEnd, Segment } from '../../ways/run.ts';
import type { WayEnd } from '../../ways/way-cost.ts';
import { workScheme } from '../work-scheme.ts';
import { type Aim, weightOf } from './aim.ts';
import { schemeOf } from './gate.ts';
import { keptEnd } from './kept-costs.ts';
import { linksBy } from './link-costs.ts';
import type { SchemeColumn } from './scheme-column.ts';
import type { Part, SearchGround } from './search-ground.ts';
import type { Workshop } from './workshop.ts';

/** A run pinned by hand, as the job file has it. */
type PinnedRun = NonNullable<Part['runs']>[number];

/**
 * The parts of a column, each cable pinned by waypoints as a person would pin it where the aim takes another way than the
 * cheapest: what is not pinned is laid the cheapest way wherever the scheme is opened. Worked out once a column.
 */
export function pinnedParts(shop: Workshop, column: SchemeColumn): readonly Part[] {
  if (shop.aim.perMilliPoint === 0) return column.parts();
  const known = shop.pinned.get(column);
  if (known !== undefined) return known;
  const parts = column.parts();
  const runs = pinnedRuns(shop, schemeOf(shop.ground, 'to-pin', parts)).slice(shop.ground.locked.length);
  const pinned = parts.map((part, i): Part => {
    const own = runs[i] ?? [];
    return own.length === 0 ? part : { ...part, runs: [...own] };
  });
  shop.pinned.set(column, pinned);
  return pinned;
}

/** By connection of a scheme, the runs that an aim has pinned. */
export function pinnedRuns(
  { ground, aim }: Pick<Workshop, 'ground' | 'aim'>,
  scheme: Scheme,
): readonly (readonly PinnedRun[])[] {
  const worked = workScheme(ground.house, scheme);
  return scheme.connections.map(({ id }) => {
    const own = worked.runs.filter(({ connectionId }) => connectionId === id);
    return pinnedOf(worked, own, (run) => pinOfRun(ground, aim, run));
  });
}

/** The waypoints of a run that the aim wants elsewhere than the cheapest way; none where that is as good. */
function pinOfRun(ground: SearchGround, aim: Aim, run: Run): readonly Waypoint[] {
  const [from, to] = [endOfRun(ground, run.from), endOfRun(ground, run.to)];
  if (from === null || to === null || !aim.ways.includes('mess')) return [];
  const [cheapest, least] = (['pence', 'mess'] as const).map((by) =>
    weightOf(aim, linksBy(ground, by)(from, to, run.cable)),
  );
  return least !== undefined && cheapest !== undefined && least < cheapest ? pinOf(ground, from, to) : [];
}

/** An end of a run as a way can lead to it; null where it has no place. */
export function wayEndOf({ pointById }: Plan, { position, pointId, kind }: RunEnd): WayEnd | null {
  const mount: Mount = pointById.get(pointId ?? '')?.mount ?? null;
  return position === null ? null : { position, mount, kind };
}

function endOfRun({ house: { plan }, kept }: SearchGround, of: RunEnd): WayEnd | null {
  const end = wayEndOf(plan, of);
  return end === null ? null : keptEnd(kept, end);
}

/**
 * The runs of one connection that are pinned. An end without a name (a joint, a unit or a circuit that is brought along) goes by that
 * of the other; of cables that go by the same, which their order alone tells apart, those before a pinned one are listed
 * without waypoints.
 */
function pinnedOf(
  { proposed }: Worked,
  own: readonly Run[],
  pin: (run: Run) => readonly Waypoint[],
): readonly PinnedRun[] {
  const nodes = new Map(proposed.nodes.map((node) => [node.id, node]));
  const all = own.map((run): PinnedRun => {
    const [from, to] = [run.from, run.to].map(({ nodeId }) => nameOf(nodes.get(nodeId)));
    const any = from ?? to ?? { origin: run.circuitIds[0] ?? '' };
    return { from: from ?? any, to: to ?? any, via: [...pin(run)] };
  });
  const endsOf = ({ from, to }: PinnedRun): string => JSON.stringify([from, to]);
  return all.filter((run, i) =>
    all.slice(i).some((other) => other.via.length > 0 && endsOf(other) === endsOf(run)),
  );
}

/** What the job file calls an end; null where it has no word for it. */
function nameOf(node: NetworkNode | undefined): End | null {
  if (node?.circuitId && node.state === 'found') return { origin: node.circuitId };
  if (!node?.pointId) return null;
  return node.kind === 'load-terminals' ? { point: node.pointId, side: 'load' } : { point: node.pointId };
}

/** The least disturbing way between two ends as waypoints: its corners, and its end too where the way on from the last is not found by itself. */
export function pinOf(
  ground: Pick<SearchGround, 'house' | 'ways'>,
  from: WayEnd,
  to: WayEnd,
): readonly Waypoint[] {
  const { house, ways } = ground;
  const { segments } = ways.route(from, to, 'mess');
  const all = segments.map((segment, i) => waypointOf(segment, i < segments.length - 1));
  const corners = all.slice(0, -1);
  if (corners.length === 0) return all;
  const laid = house.findRun({
    plan: house.plan,
    from: from.position,
    to: to.position,
    via: corners,
    fromMount: from.mount,
    toMount: to.mount,
    tariff: house.tariff,
  }).segments;
  return isSameLay(laid, segments) ? corners : all;
}

/** Whether a run passes the corners of a pin, to the millimetre. */
export function isSameWay({ segments }: Run, pin: readonly Waypoint[]): boolean {
  return pin.every(({ at: [x, y], heightMm }, i) => {
    const to = segments[i]?.to;
    return to !== undefined && Math.hypot(to.at[0] - x, to.at[1] - y, to.heightMm - heightMm) < 1;
  });
}

const isSameLay = (some: readonly Segment[], others: readonly Segment[]): boolean =>
  some.length === others.length && some.at(-1)?.medium === others.at(-1)?.medium;

/** The corner that a stretch leads to, and what the stretch is; corners to the millimetre, the end just where it is. */
function waypointOf({ to, ...stretch }: Segment, isCorner: boolean): Waypoint {
  const mm = (value: number): number => (isCorner ? Math.round(value) : value);
  return {
    storey: to.storeyId,
    at: [mm(to.at[0]), mm(to.at[1])],
    heightMm: mm(to.heightMm),
    medium: stretch.medium,
    containment: stretch.containment,
    ...(stretch.wallId === null ? {} : { wall: stretch.wallId }),
    ...(stretch.side === null ? {} : { side: stretch.side }),
    ...(stretch.depthMm === null ? {} : { depthMm: stretch.depthMm }),
    ...(stretch.insulation === null ? {} : { insulation: stretch.insulation }),
  };
}
