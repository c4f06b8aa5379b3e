import type { End, Waypoint } from '#model/cable.ts';
import type { NetworkNode } from '../../circuit/network.ts';
import type { Worked } from '../../connections/worked.ts';
import type { Mount } from '../../ways/route.ts';
import type { Run, RunEnd, Segment } from '../../ways/run.ts';
import type { WayEnd } from '../../ways/way-cost.ts';
import { routeOptions, workScheme } from '../work-scheme.ts';
import { weightOf } from './aim.ts';
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
  const parts = withPins(shop, column.parts());
  shop.pinned.set(column, parts);
  return parts;
}

function withPins(shop: Workshop, parts: readonly Part[]): readonly Part[] {
  const { ground } = shop;
  const scheme = schemeOf(ground, 'to-pin', parts);
  const worked = workScheme(ground.house, scheme);
  const added = scheme.connections.slice(ground.locked.length);
  return parts.map((part, i): Part => {
    const own = worked.runs.filter(({ connectionId }) => connectionId === added[i]?.id);
    const runs = pinnedRuns(worked, own, (run) => pinOfRun(shop, run));
    return runs.length === 0 ? part : { ...part, runs: [...runs] };
  });
}

/** The waypoints of a run that the aim wants elsewhere than the cheapest way; none where that is as good. */
function pinOfRun({ ground, aim }: Workshop, run: Run): readonly Waypoint[] {
  const [from, to] = [endOfRun(ground, run.from), endOfRun(ground, run.to)];
  if (from === null || to === null) return [];
  const [cheapest, least] = (['pence', 'mess'] as const).map((by) =>
    weightOf(aim, linksBy(ground, by)(from, to, run.cable)),
  );
  return least !== undefined && cheapest !== undefined && least < cheapest ? pinOf(ground, from, to) : [];
}

function endOfRun(
  { house: { plan }, kept }: SearchGround,
  { position, pointId, kind }: RunEnd,
): WayEnd | null {
  const mount: Mount = plan.pointById.get(pointId ?? '')?.mount ?? null;
  return position === null ? null : keptEnd(kept, { position, mount, kind });
}

/**
 * The runs of one connection that are pinned. Where an end of some cable has no name (a joint, a unit that is brought
 * along), cables before the last pinned one are listed without waypoints, since such runs are told apart by their order alone.
 */
function pinnedRuns(
  { proposed }: Worked,
  own: readonly Run[],
  pin: (run: Run) => readonly Waypoint[],
): readonly PinnedRun[] {
  const nodes = new Map(proposed.nodes.map((node) => [node.id, node]));
  const all = own.map((run) => ({ run, via: pin(run), ends: endsOf(nodes, run) }));
  const last = all.findLastIndex(({ via }) => via.length > 0);
  const isNamed = all.every(({ ends: [from, to] }) => from !== null && to !== null);
  return all
    .slice(0, last + 1)
    .filter(({ via }) => !isNamed || via.length > 0)
    .map(({ run, via, ends: [from, to] }): PinnedRun => {
      const any = from ?? to ?? { origin: run.circuitIds[0] ?? '' };
      return { from: from ?? any, to: to ?? any, via: [...via] };
    });
}

const endsOf = (nodes: ReadonlyMap<string, NetworkNode>, { from, to }: Run) =>
  [nameOf(nodes.get(from.nodeId)), nameOf(nodes.get(to.nodeId))] as const;

/** What the job file calls an end; null where it has no word for it. */
function nameOf(node: NetworkNode | undefined): End | null {
  if (node?.circuitId) return { origin: node.circuitId };
  if (!node?.pointId) return null;
  return node.kind === 'load-terminals' ? { point: node.pointId, side: 'load' } : { point: node.pointId };
}

/** The least disturbing way between two ends as waypoints: its corners, and its end too where the way on from the last is not found by itself. */
export function pinOf(ground: SearchGround, from: WayEnd, to: WayEnd): readonly Waypoint[] {
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
    options: routeOptions,
  }).segments;
  return isSameLay(laid, segments) ? corners : all;
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
