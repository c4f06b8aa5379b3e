import type { Connection } from '#model/scheme.ts';
import { cableLayer, type LayCable } from './draft-cables.ts';
import { layFeeds } from './draft-feeds.ts';
import { alongWithin, cutLeg, moveEnd } from './draft-legs.ts';
import { isFed, type UnitNodes, unitNodes } from './draft-terminals.ts';
import type { NetworkEdge, NodeId } from './network.ts';
import { draftLinks, type NetworkDraft, partsOfLeg, reportProblem } from './network-draft.ts';
import { reachedFrom } from './network-graph.ts';

type FuseDown = Extract<Connection, { kind: 'fuse-down' }>;

/**
 * Sets a fused unit into the leg of an existing spur, so that all beyond it is behind the fuse.
 *
 * Without `alongMm` the unit goes beside the spur's source: one new cable from the source to it, and the
 * old leg, lifted at the source, is moved to its load side. With `alongMm` the leg is cut there and both
 * cut ends are brought into the unit. A leg that lies on a cycle is no spur: nothing is done.
 */
export function editFuseDown(draft: NetworkDraft, connection: FuseDown): void {
  const { id, leg, unit, feeds } = connection;
  const parts = partsOfLeg(draft, leg);
  const first = parts[0];
  if (!first) {
    reportProblem(draft, id, 'leg-gone', leg);
    return;
  }
  if (parts.some((part) => isOnCycle(draft, part))) {
    reportProblem(draft, id, 'not-a-spur', leg);
    return;
  }
  const inLeg =
    connection.alongMm === undefined
      ? null
      : {
          legId: leg,
          alongMm: alongWithin(draft, id, { legId: leg, alongMm: connection.alongMm }),
        };
  const nodes = unitNodes(draft, connection, inLeg);
  if (!nodes) return;
  if (isFed(draft, nodes.supply)) {
    reportProblem(draft, id, 'already-connected', nodes.supply);
    return;
  }
  draft.fed.add(nodes.supply);
  const lay = cableLayer(draft, connection);
  const isFromSource = sourceIsFrom(draft, parts);
  if (inLeg) setIntoLeg(draft, connection, { ...inLeg, nodes, isFromSource });
  else setBesideSource(draft, { parts, nodes, isFromSource, lay });
  const words = typeof unit === 'string' ? ['unit', unit] : ['unit'];
  layFeeds(draft, id, { start: { node: nodes.load, words }, feeds, lay });
}

function isOnCycle(draft: NetworkDraft, cable: NetworkEdge): boolean {
  const links = draftLinks(draft, 'cables');
  return reachedFrom([cable.from], links, ({ edge }) => edge.id !== cable.id).has(cable.to);
}

function setIntoLeg(
  draft: NetworkDraft,
  { id }: FuseDown,
  set: { legId: string; alongMm: number; nodes: UnitNodes; isFromSource: boolean },
): void {
  const { supply, load } = set.nodes;
  const [before, beyond] = set.isFromSource ? [supply, load] : [load, supply];
  if (!cutLeg(draft, { legId: set.legId, atMm: set.alongMm, before, beyond }))
    reportProblem(draft, id, 'leg-gone', set.legId);
}

function setBesideSource(
  draft: NetworkDraft,
  {
    parts,
    nodes,
    isFromSource,
    lay,
  }: { parts: readonly NetworkEdge[]; nodes: UnitNodes; isFromSource: boolean; lay: LayCable },
): void {
  const part = isFromSource ? parts[0] : parts.at(-1);
  if (!part) return;
  const source = isFromSource ? part.from : part.to;
  lay(source, nodes.supply);
  moveEnd(draft, part, source, nodes.load);
}

/** Whether the leg's `from` is the end nearer the board; where neither end leads there, the end that is no claimed spur, else `from`. */
function sourceIsFrom(draft: NetworkDraft, parts: readonly NetworkEdge[]): boolean {
  const from = parts[0]?.from ?? '';
  const to = parts.at(-1)?.to ?? '';
  const origins = [...draft.nodes.values()].filter(({ kind }) => kind === 'origin').map(({ id }) => id);
  const own = new Set(parts.map(({ id }) => id));
  const live = reachedFrom(origins, draftLinks(draft, 'cables-and-fuses'), ({ edge }) => !own.has(edge.id));
  if (live.has(from) !== live.has(to)) return live.has(from);
  const isSpur = (node: NodeId): boolean =>
    draft.pointById.get(draft.nodes.get(node)?.pointId ?? '')?.asFound?.role === 'spur';
  return !isSpur(from) || isSpur(to);
}
