import type { Job } from '#model/job.ts';
import type { Connection, Remedy } from '#model/scheme.ts';
import { applyPointChanges } from './draft-points.ts';
import { checkTappedPoints } from './draft-taps.ts';
import { editCloseSpur } from './edit-close-spur.ts';
import { editFuseDown } from './edit-fuse-down.ts';
import { editFusedSpur } from './edit-fused-spur.ts';
import { editRadial } from './edit-radial.ts';
import { editRingExtension } from './edit-ring-extension.ts';
import { editSpur } from './edit-spur.ts';
import type { Network } from './network.ts';
import { draftLinks, draftOf, type NetworkDraft, networkOf } from './network-draft.ts';
import { reachedFrom } from './network-graph.ts';
import { fitDevices } from './place-remedies.ts';

/**
 * The wiring when a scheme is carried out: its connections made (`connectedNetwork`), then, by its remedies,
 * the new devices of circuits. A circuit that no remedy reaches keeps its device as found, the same object.
 */
export function proposedNetwork(job: Job, connected: Network, remedies: readonly Remedy[]): Network {
  return { ...connected, ...fitDevices(job, connected, remedies) };
}

/**
 * The wiring with the connections of a scheme made, every device as found: points that go are taken out or
 * replaced, then every connection is made in the order given. The found network is not changed.
 *
 * What cannot be done as written is listed under `problems`, and the sensible rest of it is done. Wanted
 * points that no connection names are not in the network. A point of a circuit without legs stays under
 * `unwired` until a connection joins it to an origin.
 */
export function connectedNetwork(job: Job, found: Network, connections: readonly Connection[]): Network {
  const draft = draftOf(job, found);
  applyPointChanges(draft);
  for (const connection of connections) applyConnection(draft, connection, job);
  checkTappedPoints(draft);
  forgetWired(draft);
  forgetUntouched(draft);
  return networkOf(draft);
}

function applyConnection(draft: NetworkDraft, connection: Connection, job: Job): void {
  switch (connection.kind) {
    case 'spur':
      editSpur(draft, connection);
      break;
    case 'fused-spur':
      editFusedSpur(draft, connection);
      break;
    case 'ring-extension':
      editRingExtension(draft, connection);
      break;
    case 'radial':
      editRadial(draft, connection, job);
      break;
    case 'fuse-down':
      editFuseDown(draft, connection);
      break;
    case 'close-spur':
      editCloseSpur(draft, connection);
      break;
  }
}

function forgetWired(draft: NetworkDraft): void {
  const origins = [...draft.nodes.values()].filter(({ kind }) => kind === 'origin').map(({ id }) => id);
  const live = reachedFrom(origins, draftLinks(draft, 'cables-and-fuses'));
  for (const [circuitId, points] of [...draft.unwired]) {
    const left = points.filter(({ id }) => !live.has(id));
    if (left.length === 0) draft.unwired.delete(circuitId);
    else draft.unwired.set(circuitId, left);
  }
}

/** Wanted points that were named but to which no cable was laid in the end. */
function forgetUntouched(draft: NetworkDraft): void {
  const touched = new Set(
    [...draft.edges.values()].flatMap(({ kind, from, to }) => (kind === 'cable' ? [from, to] : [])),
  );
  for (const point of draft.pointById.values()) {
    if (point.status !== 'wanted' || draft.successors.has(point.replaces ?? '')) continue;
    const nodes = [...draft.nodes.values()].filter(({ pointId }) => pointId === point.id);
    if (nodes.some(({ id }) => touched.has(id))) continue;
    for (const { id } of nodes) draft.nodes.delete(id);
    for (const edge of [...draft.edges.values()])
      if (nodes.some(({ id }) => id === edge.from)) draft.edges.delete(edge.id);
  }
}
