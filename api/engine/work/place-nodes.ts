import { isInOldBox, jointInOldBox } from '../circuit/moved-away.ts';
import type { Network, NetworkNode } from '../circuit/network.ts';
import type { Worked } from '../connections/worked.ts';

/** The nodes of one place: as proposed, and as it was found. */
export interface PlaceNodes {
  readonly id: string;
  /** Supply before load sides; empty where nothing of it is left in the circuit. */
  readonly now: readonly NetworkNode[];
  readonly before: readonly NetworkNode[];
}

/**
 * The nodes of the circuits that a scheme touches, put together as people see them: a unit's two sides, a grid's modules, the
 * circuits of one board, all that is joined in one old box. A place whose accessory is exchanged is one, before and after.
 * By place id.
 */
export function placesOfNodes(worked: Worked): readonly PlaceNodes[] {
  const now = grouped(touchedNodes(worked, 'proposed'), (node) => placeId(worked.proposed, node));
  const before = grouped(touchedNodes(worked, 'found'), (node) => placeBefore(worked, now, node));
  const ids = [...new Set([...now.keys(), ...before.keys()])].toSorted();
  return ids.map((id) => ({ id, now: now.get(id) ?? [], before: before.get(id) ?? [] }));
}

function touchedNodes(worked: Worked, which: 'proposed' | 'found'): readonly NetworkNode[] {
  const shapes = which === 'proposed' ? worked.shapes : worked.foundShapes;
  const ids = new Set(
    worked.circuitIds.flatMap((id) => [id, ...(shapes.get(id)?.places.map(({ nodeId }) => nodeId) ?? [])]),
  );
  // A cable that leads out of a circuit ends somewhere too.
  for (const { kind, from, to } of worked[which].edges)
    if (kind === 'cable' && (ids.has(from) || ids.has(to))) for (const id of [from, to]) ids.add(id);
  return worked[which].nodes.filter(({ id }) => ids.has(id));
}

function placeId({ circuits }: Network, { id, kind, pointId }: NetworkNode): string {
  if (kind === 'origin') return `board/${circuits.find((circuit) => circuit.id === id)?.board?.id ?? id}`;
  if (pointId === null) return id.replace(/\/load$/, '');
  return isInOldBox(id) ? jointInOldBox(pointId) : pointId;
}

/** Where what was found at a node is now: the same place, what took the point's place in its box, or its old box. */
function placeBefore({ job, found }: Worked, now: ReadonlyMap<string, unknown>, node: NetworkNode): string {
  const id = placeId(found, node);
  if (now.has(id) || node.pointId === null) return id;
  const oldBox = jointInOldBox(node.pointId);
  const next = job.points.find(({ replaces }) => replaces === node.pointId)?.id;
  return !now.has(oldBox) && next !== undefined && now.has(next) ? next : oldBox;
}

function grouped(
  nodes: readonly NetworkNode[],
  idOf: (node: NetworkNode) => string,
): ReadonlyMap<string, readonly NetworkNode[]> {
  const groups = new Map<string, NetworkNode[]>();
  for (const node of nodes) {
    const id = idOf(node);
    const group = groups.get(id);
    if (group === undefined) groups.set(id, [node]);
    else group.push(node);
  }
  return groups;
}
