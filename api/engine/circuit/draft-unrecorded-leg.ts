import type { Joint } from '#model/installation.ts';
import { bringJoint } from './draft-cables.ts';
import type { NodeId } from './network.ts';
import type { NetworkDraft } from './network-draft.ts';

/**
 * Adds the kept end of an old cable that no leg records: from the neighbour's terminals to where it was
 * cut. Its length and make are unknown; it is `<connectionId>/old-out` or `/old-back`, and `found`.
 */
export function addOldCable(
  draft: NetworkDraft,
  connectionId: string,
  side: {
    readonly role: 'joint-out' | 'joint-back';
    readonly neighbour: NodeId;
    readonly cutAt: NodeId;
    readonly joint: { readonly made: Joint | undefined } | null;
  },
): void {
  const { role, neighbour, cutAt, joint } = side;
  if (joint) bringJoint(draft, connectionId, { role, joint: joint.made, inLeg: null });
  const id = `${connectionId}/${role === 'joint-out' ? 'old-out' : 'old-back'}`;
  draft.edges.set(id, {
    id,
    kind: 'cable',
    from: neighbour,
    to: cutAt,
    originEnd: null,
    legId: null,
    partMm: null,
    connectionId,
    cable: null,
    lengthMm: null,
    fuseA: null,
    state: 'found',
  });
}
