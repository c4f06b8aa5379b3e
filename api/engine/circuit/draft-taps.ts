import type { Tap } from '#model/scheme.ts';
import { bringJoint } from './draft-cables.ts';
import { alongWithin, cutLeg } from './draft-legs.ts';
import { departureNode } from './draft-terminals.ts';
import { isInOldBox } from './moved-away.ts';
import type { NodeId } from './network.ts';
import { draftLinks, type NetworkDraft, reportProblem } from './network-draft.ts';
import { reachedFrom } from './network-graph.ts';

/**
 * The node from which a new cable is taken: an origin, a point (a fused unit's load side), or a joint
 * `<connectionId>/joint` cut into a leg.
 *
 * @param towards the point that the new cable leads to.
 * @returns null, with the problem reported, when the point or that part of the leg is gone.
 */
export function tapNode(
  draft: NetworkDraft,
  connectionId: string,
  { from, towards }: { from: Tap; towards: string | null },
): NodeId | null {
  if ('origin' in from) return from.origin;
  if ('leg' in from) return jointInLeg(draft, connectionId, from);
  const node = departureNode(draft, from.point, towards);
  if (node === null) {
    reportProblem(draft, connectionId, 'no-existing-point', from.point);
    return null;
  }
  draft.tapped.push({ connectionId, pointId: from.point, nodeId: node });
  return node;
}

function jointInLeg(
  draft: NetworkDraft,
  connectionId: string,
  tap: Extract<Tap, { leg: string }>,
): NodeId | null {
  const alongMm = alongWithin(draft, connectionId, { legId: tap.leg, alongMm: tap.alongMm });
  const node = `${connectionId}/joint`;
  if (!cutLeg(draft, { legId: tap.leg, atMm: alongMm, before: node, beyond: node })) {
    reportProblem(draft, connectionId, 'leg-gone', tap.leg);
    return null;
  }
  return bringJoint(draft, connectionId, {
    role: 'joint',
    joint: tap.joint,
    inLeg: { legId: tap.leg, alongMm },
  });
}

/**
 * Reports taps at points that are not there to be tapped: wanted ones that no other connection joins on.
 * Looked at when all connections are made, so that their order does not matter here.
 */
export function checkTappedPoints(draft: NetworkDraft): void {
  const links = draftLinks(draft, 'cables-and-fuses');
  for (const { connectionId, pointId, nodeId } of draft.tapped) {
    const reached = reachedFrom([nodeId], links, ({ edge }) => edge.connectionId !== connectionId);
    const isThere = [...reached].some((id) => {
      const node = draft.nodes.get(id);
      return node?.kind === 'origin' || node?.state === 'found' || isInOldBox(id);
    });
    const replaces = draft.pointById.get(pointId)?.replaces;
    const takesOver = replaces !== undefined && draft.successors.has(replaces);
    if (!isThere && !takesOver) reportProblem(draft, connectionId, 'no-existing-point', pointId);
  }
}
