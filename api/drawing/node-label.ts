import type { Worked } from '#engine/connections/worked.ts';
import { endWords } from './end-words.ts';

const pointLabel = ({ job }: Worked, pointId: string): string =>
  job.points.find(({ id }) => id === pointId)?.label ?? pointId;

/** What people call a node: the point's label, the circuit's board, or what a connection brings along. */
export function nodeLabel(worked: Worked, nodeId: string): string {
  const node =
    worked.proposed.nodes.find((candidate) => candidate.id === nodeId) ??
    worked.found.nodes.find((candidate) => candidate.id === nodeId);
  if (node === undefined) return nodeId;
  if (node.pointId !== null) return pointLabel(worked, node.pointId);
  if (node.kind === 'origin') {
    const circuit = worked.proposed.circuits.find((candidate) => candidate.id === node.circuitId);
    return circuit?.board?.label ?? 'board';
  }
  if (node.kind !== 'joint') return 'fused unit';
  const leg = worked.job.legs.find((candidate) => candidate.id === node.inLeg?.legId);
  if (leg === undefined) return 'joint';
  const labelOf = (id: string): string => pointLabel(worked, id);
  return `joint in ${endWords(leg.from, labelOf)}–${endWords(leg.to, labelOf)}`;
}
