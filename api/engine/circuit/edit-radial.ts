import type { Job } from '#model/job.ts';
import type { Connection } from '#model/scheme.ts';
import { cableLayer } from './draft-cables.ts';
import { layFeeds } from './draft-feeds.ts';
import { type NetworkDraft, reportProblem } from './network-draft.ts';

type Radial = Extract<Connection, { kind: 'radial' }>;

/**
 * Adds a circuit of its own, `<connectionId>/circuit`, named after the points that it feeds from the board,
 * and lays its feeds.
 */
export function editRadial(draft: NetworkDraft, connection: Radial, job: Job): void {
  const { id, board, device, feeds } = connection;
  const circuitId = `${id}/circuit`;
  draft.circuits.set(circuitId, {
    id: circuitId,
    name: circuitName(draft, connection),
    board: job.boards.find((each) => each.id === board) ?? null,
    device,
    circuit: null,
    isNew: true,
  });
  draft.nodes.set(circuitId, {
    id: circuitId,
    kind: 'origin',
    pointId: null,
    circuitId,
    connectionId: id,
    place: null,
    inLeg: null,
    joint: null,
    state: 'new',
  });
  if (feeds.length === 0) reportProblem(draft, id, 'nothing-to-connect', id);
  const lay = cableLayer(draft, connection);
  layFeeds(draft, id, { start: { node: circuitId, words: ['origin'] }, feeds, lay });
}

function circuitName(draft: NetworkDraft, { feeds }: Radial): string {
  const labels = feeds.flatMap(({ to }) => draft.pointById.get(to)?.label ?? []);
  return labels.length > 0 ? `New radial: ${labels.join(', ')}` : 'New radial';
}
