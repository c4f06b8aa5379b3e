import type { Joint } from '#model/installation.ts';
import type { Connection } from '#model/scheme.ts';
import type { NodeId } from './network.ts';
import type { NetworkDraft } from './network-draft.ts';
import { USUAL_CABLE } from './usual-cable.ts';

/** Lays one cable between two nodes. */
export type LayCable = (from: NodeId, to: NodeId) => void;

/** Lays a connection's new cables, numbered `<connectionId>/cable-<n>` from 1 in the order of laying. */
export function cableLayer(draft: NetworkDraft, connection: Connection): LayCable {
  let n = 0;
  return (from, to) => {
    n += 1;
    const id = `${connection.id}/cable-${n}`;
    draft.edges.set(id, {
      id,
      kind: 'cable',
      from,
      to,
      originEnd: null,
      legId: null,
      partMm: null,
      connectionId: connection.id,
      cable: connection.cable ?? USUAL_CABLE,
      lengthMm: null,
      fuseA: null,
      state: 'new',
    });
  };
}

/** Adds a joint that a connection brings along, in a leg where the leg is told. */
export function bringJoint(
  draft: NetworkDraft,
  connectionId: string,
  {
    role,
    joint,
    inLeg,
  }: {
    role: 'joint' | 'joint-out' | 'joint-back';
    joint: Joint | undefined;
    inLeg: { legId: string; alongMm: number } | null;
  },
): NodeId {
  const id = `${connectionId}/${role}`;
  draft.nodes.set(id, {
    id,
    kind: 'joint',
    pointId: null,
    circuitId: null,
    connectionId,
    place: joint?.place ?? null,
    inLeg,
    joint: joint ?? null,
    state: 'new',
  });
  return id;
}
