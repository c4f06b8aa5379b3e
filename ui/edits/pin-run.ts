import type { NetworkNode } from '#engine/circuit/network.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { type Pin, pinsByCable } from '#engine/ways/lay-runs.ts';
import type { Run } from '#engine/ways/run.ts';
import type { End, Waypoint } from '#model/cable.ts';
import type { Connection } from '#model/scheme.ts';
import type { JobEdit } from '../job-events.ts';
import type { ConnectionAt } from './connections.ts';

/** The name of a node; null for what a connection brings along: a joint, a unit, a new circuit's origin. */
function nameOf(node: NetworkNode, nodes: readonly NetworkNode[]): End | null {
  if (node.kind === 'origin')
    return node.circuitId === null || node.state === 'new' ? null : { origin: node.circuitId };
  const { pointId } = node;
  if (pointId === null) return null;
  if (node.kind === 'load-terminals') return { point: pointId, side: 'load' };
  const hasLoadSide = nodes.some((one) => one.pointId === pointId && one.kind === 'load-terminals');
  return hasLoadSide ? { point: pointId, side: 'supply' } : { point: pointId };
}

/** An end of the leg that a joint is in; null for anything else. */
const legEnd = ({ job }: Worked, node: NetworkNode): End | null =>
  job.legs.find(({ id }) => id === node.inLeg?.legId)?.from ?? null;

/**
 * Both ends of a new cable as the job file names them. For a joint in a leg an end of that leg stands in, for anything else
 * without a name the cable's other end; between two of them one end that is neither's is named twice. Null where the job has
 * none to name.
 */
function endsOf(worked: Worked, run: Run): readonly [End, End] | null {
  const { nodes } = worked.proposed;
  const [from, to] = [run.from, run.to].map(({ nodeId }) => nodes.find(({ id }) => id === nodeId));
  if (from === undefined || to === undefined) return null;
  const [one, other] = [nameOf(from, nodes), nameOf(to, nodes)];
  const known = one ?? other;
  if (known !== null) return [one ?? legEnd(worked, from) ?? known, other ?? legEnd(worked, to) ?? known];
  const [circuit] = worked.job.circuits;
  const any = legEnd(worked, from) ?? legEnd(worked, to) ?? (circuit ? { origin: circuit.id } : null);
  return any === null ? null : [any, any];
}

/** Why the way of a new cable cannot be pinned; null where it can. */
export const whyNotPinned = (worked: Worked, run: Run): string | null =>
  endsOf(worked, run) === null ? 'both its ends are new, and there is no circuit to name them by' : null;

const pinOf = ({ proposed }: Worked, connections: readonly Connection[], run: Run): Pin | null =>
  pinsByCable(proposed, connections).get(run.id) ?? null;

/** The corners by which a new cable is pinned, from its first end to its last; none where it is not. */
export function pinnedVia(worked: Worked, run: Run): readonly Waypoint[] {
  const pin = pinOf(worked, worked.scheme?.connections ?? [], run);
  if (pin === null) return [];
  return pin.backwards ? turned(pin.via) : pin.via;
}

/** Corners the other way round: what is said of a stretch is said at the corner that it then leads to. */
function turned(via: readonly Waypoint[]): readonly Waypoint[] {
  return via.toReversed().map(({ storey, at, heightMm }, i, all) => {
    const { storey: _storey, at: _at, heightMm: _height, ...stretch } = via[all.length - i] ?? {};
    return { storey, at, heightMm, ...stretch };
  });
}

/**
 * Pins the way of a new cable by its corners, from its first end to its last, in place of what was pinned before; no corner
 * lets the search for ways lead it again.
 */
export function pinRun(
  worked: Worked,
  at: ConnectionAt,
  { run, name, via }: { readonly run: Run; readonly name: string; readonly via: readonly Waypoint[] },
): JobEdit {
  const ends = endsOf(worked, run);
  return {
    label: via.length === 0 ? `Let the way of ${name} go` : `Pin the way of ${name}`,
    change: (job) => {
      const connection = job.schemes
        .find(({ id }) => id === at.schemeId)
        ?.connections.find(({ id }) => id === at.connectionId);
      if (connection === undefined || ends === null) return;
      const own = pinOf(worked, [connection as Connection], run)?.index;
      const others = (connection.runs ?? []).filter((_, i) => i !== own);
      const pinned = { from: { ...ends[0] }, to: { ...ends[1] }, via: structuredClone([...via]) };
      connection.runs = via.length === 0 ? others : [...others, pinned];
      if (connection.runs.length === 0) delete connection.runs;
    },
  };
}
