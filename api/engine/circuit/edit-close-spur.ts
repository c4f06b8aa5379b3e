import type { Connection } from '#model/scheme.ts';
import { bridgeIds } from './bridges.ts';
import { bringJoint, cableLayer } from './draft-cables.ts';
import { alongWithin, type OpenedSide, openLeg } from './draft-legs.ts';
import { arrivalNode } from './draft-terminals.ts';
import type { EditProblem, NodeId } from './network.ts';
import { cablesAt, draftLinks, type NetworkDraft, partsOfLeg, reportProblem } from './network-draft.ts';
import { reachedFrom } from './network-graph.ts';

type CloseSpur = Extract<Connection, { kind: 'close-spur' }>;

/**
 * Takes an existing spur into the ring: the ring leg is lifted at the spur's source, and the neighbour's
 * side of it is joined on to the spur's end. With `terminals` the whole leg goes and new cable runs from the
 * spur's end to the neighbour; with a joint new cable runs from the spur's end to it
 * (`<connectionId>/joint-back`); with the old cable its cut end is brought into the spur's end itself.
 */
export function editCloseSpur(draft: NetworkDraft, connection: CloseSpur): void {
  const { id, leg, back } = connection;
  const end = arrivalNode(draft, connection.point);
  if (end === null || cablesAt(draft, end).length === 0) {
    reportProblem(draft, id, 'no-existing-point', connection.point);
    return;
  }
  const parts = partsOfLeg(draft, leg);
  const from = parts[0]?.from;
  const to = parts.at(-1)?.to;
  if (from === undefined || to === undefined) {
    reportProblem(draft, id, 'leg-gone', leg);
    return;
  }
  const source = sourceOf(draft, end, { from, to, ids: new Set(parts.map((part) => part.id)) });
  if (typeof source === 'string') {
    reportProblem(draft, id, source, source === 'not-a-spur' ? connection.point : leg);
    return;
  }
  const alongMm =
    back.how === 'terminals' ? null : alongWithin(draft, id, { legId: leg, alongMm: back.alongMm });
  const neighbour = source.isFrom ? to : from;
  const cutAt = { terminals: neighbour, joint: `${id}/joint-back`, 'old-cable': end }[back.how];
  const kept: OpenedSide = alongMm === null ? 'lifted' : { atMm: alongMm, node: cutAt };
  const code = openLeg(draft, id, {
    legId: leg,
    fromSide: source.isFrom ? 'lifted' : kept,
    toSide: source.isFrom ? kept : 'lifted',
  });
  if (code) {
    reportProblem(draft, id, code, leg);
    return;
  }
  if (back.how === 'joint' && alongMm !== null)
    bringJoint(draft, id, { role: 'joint-back', joint: back.joint, inLeg: { legId: leg, alongMm } });
  if (back.how !== 'old-cable') cableLayer(draft, connection)(end, cutAt);
}

/**
 * Which end of the ring leg is the spur's source: the one that the spur's end reaches by cable alone,
 * without the leg and without going round the ring.
 */
function sourceOf(
  draft: NetworkDraft,
  end: NodeId,
  leg: { from: NodeId; to: NodeId; ids: ReadonlySet<string> },
): { readonly isFrom: boolean } | Extract<EditProblem['code'], 'not-a-spur' | 'not-from-source'> {
  const links = draftLinks(draft, 'cables');
  const bridges = bridgeIds(links);
  // Where the ring is not closed, every cable is a bridge, the leg too: the way back is then not told apart.
  const reached = reachedFrom([end], links, ({ edge }) => bridges.has(edge.id) && !leg.ids.has(edge.id));
  const onCycle = (links.get(end) ?? []).some(({ edge }) => !bridges.has(edge.id));
  if (onCycle) return 'not-a-spur';
  const isFrom = reached.has(leg.from);
  if (end === leg.from || end === leg.to || isFrom === reached.has(leg.to)) return 'not-from-source';
  const isRingHere = (links.get(isFrom ? leg.from : leg.to) ?? []).some(({ edge }) => !bridges.has(edge.id));
  // Beside a closed ring, a leg that is not part of it is only another spur.
  if (isRingHere && [...leg.ids].some((id) => bridges.has(id))) return 'not-from-source';
  return { isFrom };
}
