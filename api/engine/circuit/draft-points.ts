import type { Point } from '#model/installation.ts';
import { moveEnd, removeCable } from './draft-legs.ts';
import { inIdOrder } from './id-order.ts';
import { jointInOldBox, movesAway } from './moved-away.ts';
import type { NetworkEdge, NodeId } from './network.ts';
import { cablesAt, type NetworkDraft } from './network-draft.ts';
import { loadSideOf, loadSideTowards, terminalsOfPoint } from './point-terminals.ts';
import { USUAL_CABLE } from './usual-cable.ts';

/** Adds a point's terminals to the draft, if it has none there yet. */
export function bringPoint(draft: NetworkDraft, point: Point): void {
  if (draft.nodes.has(point.id)) return;
  const { nodes, fuses } = terminalsOfPoint(point, 'new');
  for (const node of nodes) draft.nodes.set(node.id, node);
  for (const fuse of fuses) draft.edges.set(fuse.id, fuse);
}

/**
 * Carries out what the job says of points that go.
 *
 * A replaced point's cables pass to the point that replaces it, side by side where both have sides; where that one stands in a
 * box of its own, each is joined in the old box, `<pointId>/joined-<n>`, to a new cable, `<pointId>/extension-<n>`. With
 * no replacement named, it stays. A removed point at the end of a cable loses that cable, and so on up a
 * chain of removed points; any other removed point becomes a joint of its cables, `<pointId>/joined`, in
 * its box. Without legs, the survey's word decides: a claimed spur goes, anything else leaves a joint.
 */
export function applyPointChanges(draft: NetworkDraft): void {
  const points = [...draft.pointById.values()].toSorted((a, b) => inIdOrder(a.id, b.id));
  for (const point of points) if (point.status === 'replaced') replacePoint(draft, point, points);
  const going = points.filter(({ status, id }) => status === 'removed' && draft.nodes.has(id));
  dropEnds(draft, going);
  for (const point of going) if (draft.nodes.has(point.id)) joinCables(draft, point);
  for (const edge of draft.edges.values())
    if (edge.legId !== null) draft.legEnds.set(edge.legId, { from: edge.from, to: edge.to });
}

/** A point's own nodes that are in the draft. */
function nodesOf(draft: NetworkDraft, point: Point): readonly NodeId[] {
  return terminalsOfPoint(point, 'found')
    .nodes.map(({ id }) => id)
    .filter((id) => draft.nodes.has(id));
}

function replacePoint(draft: NetworkDraft, old: Point, points: readonly Point[]): void {
  const successor = points.find(
    ({ replaces, status }) => replaces === old.id && (status === 'wanted' || status === 'existing'),
  );
  if (!successor) return;
  bringPoint(draft, successor);
  const moves = movesAway(old, successor);
  let extended = 0;
  for (const node of nodesOf(draft, old))
    for (const edge of cablesAt(draft, node)) {
      const other = edge.from === node ? edge.to : edge.from;
      const towards = draft.nodes.get(other)?.pointId ?? null;
      const wasBehind = node !== old.id;
      const target = wasBehind ? loadSideOf(successor, towards) : supplyFor(successor, towards);
      if (moves) {
        extended += 1;
        extendCable(draft, old, { edge, node, target, number: extended });
      } else moveEnd(draft, edge, node, target);
    }
  forgetPoint(draft, old);
  draft.successors.set(old.id, { pointId: successor.id });
  swapUnwired(draft, old, successor);
}

interface Extension {
  readonly edge: NetworkEdge;
  readonly node: NodeId;
  readonly target: NodeId;
  readonly number: number;
}

/** An old cable ends in the old box: there it is joined to a new one that leads on to what replaces the point. */
function extendCable(draft: NetworkDraft, old: Point, { edge, node, target, number }: Extension): void {
  const joint = jointInOldBox(old.id, number);
  addJointInBox(draft, old, joint);
  moveEnd(draft, edge, node, joint);
  const id = `${old.id}/extension-${number}`;
  draft.edges.set(id, {
    ...edge,
    id,
    from: joint,
    to: target,
    originEnd: null,
    legId: null,
    partMm: null,
    cable: edge.cable ?? USUAL_CABLE,
    lengthMm: null,
    state: 'new',
  });
  draft.fed.add(target);
}

function addJointInBox(draft: NetworkDraft, point: Point, id: NodeId): void {
  draft.nodes.set(id, {
    id,
    kind: 'joint',
    pointId: point.id,
    circuitId: null,
    connectionId: null,
    place: null,
    inLeg: null,
    joint: null,
    state: 'new',
  });
}

/** A grid that takes a point's place feeds by its fused modules what they are said to feed. */
function supplyFor(successor: Point, towards: string | null): NodeId {
  return successor.kind === 'grid' ? (loadSideTowards(successor, towards) ?? successor.id) : successor.id;
}

function forgetPoint(draft: NetworkDraft, point: Point): void {
  const { nodes, fuses } = terminalsOfPoint(point, 'found');
  for (const { id } of nodes) draft.nodes.delete(id);
  for (const { id } of fuses) draft.edges.delete(id);
}

function swapUnwired(draft: NetworkDraft, old: Point, successor: Point | null): void {
  for (const [circuitId, points] of draft.unwired) {
    if (!points.some(({ id }) => id === old.id)) continue;
    const others = points.filter(({ id }) => id !== old.id && id !== successor?.id);
    const kept = successor ? [...others, successor] : others;
    if (kept.length === 0) draft.unwired.delete(circuitId);
    else
      draft.unwired.set(
        circuitId,
        kept.toSorted((a, b) => inIdOrder(a.id, b.id)),
      );
  }
}

function cablesOf(draft: NetworkDraft, point: Point): readonly NetworkEdge[] {
  return nodesOf(draft, point).flatMap((node) => cablesAt(draft, node));
}

function isUnwired(draft: NetworkDraft, point: Point): boolean {
  return [...draft.unwired.values()].some((points) => points.some(({ id }) => id === point.id));
}

/** Takes removed points off the ends of spurs until none is left there. */
function dropEnds(draft: NetworkDraft, going: readonly Point[]): void {
  const isEnd = (point: Point): boolean => {
    const cables = cablesOf(draft, point).length;
    if (cables === 0) return !isUnwired(draft, point) || point.asFound?.role === 'spur';
    return cables === 1;
  };
  const next = (): Point | undefined => going.find((point) => draft.nodes.has(point.id) && isEnd(point));
  for (let point = next(); point; point = next()) {
    for (const edge of cablesOf(draft, point)) removeCable(draft, edge, null);
    forgetPoint(draft, point);
    draft.successors.set(point.id, null);
    swapUnwired(draft, point, null);
  }
}

function joinCables(draft: NetworkDraft, point: Point): void {
  const jointId = jointInOldBox(point.id);
  for (const node of nodesOf(draft, point))
    for (const edge of cablesAt(draft, node)) moveEnd(draft, edge, node, jointId);
  forgetPoint(draft, point);
  addJointInBox(draft, point, jointId);
  draft.successors.set(point.id, { jointId });
  swapUnwired(draft, point, null);
}
