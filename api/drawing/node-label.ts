import type { Worked } from '#engine/connections/worked.ts';
import type { End } from '#model/cable.ts';

const endLabel = (worked: Worked, end: End): string =>
  'origin' in end ? 'board' : (worked.job.points.find((point) => point.id === end.point)?.label ?? end.point);

/** What people call a node: the point's label, the circuit's board, or what a connection brings along. */
export function nodeLabel(worked: Worked, nodeId: string): string {
  const node =
    worked.proposed.nodes.find((candidate) => candidate.id === nodeId) ??
    worked.found.nodes.find((candidate) => candidate.id === nodeId);
  if (node === undefined) return nodeId;
  if (node.pointId !== null)
    return worked.job.points.find((point) => point.id === node.pointId)?.label ?? node.pointId;
  if (node.kind === 'origin') {
    const circuit = worked.proposed.circuits.find((candidate) => candidate.id === node.circuitId);
    return circuit?.board?.label ?? 'board';
  }
  if (node.kind !== 'joint') return 'fused unit';
  const leg = worked.job.legs.find((candidate) => candidate.id === node.inLeg?.legId);
  return leg === undefined ? 'joint' : `joint in ${endLabel(worked, leg.from)}–${endLabel(worked, leg.to)}`;
}
