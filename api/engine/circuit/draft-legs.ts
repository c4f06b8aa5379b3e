import type { EditProblem, NetworkEdge, NodeId } from './network.ts';
import { type NetworkDraft, partsOfLeg, reportProblem } from './network-draft.ts';

/** A place in a leg, in cable from its `from`, and the part that it is in now. */
interface LegSpot {
  readonly part: NetworkEdge;
  readonly atMm: number;
}

/** One side of an opened leg: lifted at that end's terminals, or cut and the cut end brought to a node. */
export type OpenedSide = 'lifted' | { readonly atMm: number; readonly node: NodeId };

/** A leg that is opened: what lies between the two sides is taken out of use. */
export interface LegOpening {
  readonly legId: string;
  readonly fromSide: OpenedSide;
  readonly toSide: OpenedSide;
}

function spanOf(draft: NetworkDraft, edge: NetworkEdge): { fromMm: number; toMm: number } {
  const span = draft.spans.get(edge.id);
  return { fromMm: span?.fromMm ?? 0, toMm: span?.toMm ?? Number.MAX_VALUE };
}

/**
 * The length along a leg that a cut is meant at. A place beyond the leg's end is a problem, and its end is
 * taken instead.
 */
export function alongWithin(
  draft: NetworkDraft,
  connectionId: string,
  { legId, alongMm }: { legId: string; alongMm: number },
): number {
  const lengthMm = draft.legById.get(legId)?.lengthMm;
  if (lengthMm === undefined || alongMm <= lengthMm) return alongMm;
  reportProblem(draft, connectionId, 'leg-too-short', legId);
  return lengthMm;
}

/** The part of a leg that holds a place; at a joint between two parts, the `first` or the `last` of them. */
function spotInLeg(
  draft: NetworkDraft,
  legId: string,
  { atMm, prefer }: { atMm: number; prefer: 'first' | 'last' },
): LegSpot | null {
  const holding = partsOfLeg(draft, legId).filter((part) => {
    const { fromMm, toMm } = spanOf(draft, part);
    return fromMm <= atMm && atMm <= toMm;
  });
  const part = prefer === 'first' ? holding[0] : holding.at(-1);
  return part ? { part, atMm } : null;
}

/** Cuts a leg into two and brings both cut ends to a node, or to one each. @returns false when that part of the leg is gone. */
export function cutLeg(
  draft: NetworkDraft,
  { legId, atMm, before, beyond }: { legId: string; atMm: number; before: NodeId; beyond: NodeId },
): boolean {
  const spot = spotInLeg(draft, legId, { atMm, prefer: 'first' });
  if (!spot) return false;
  const { fromMm, toMm } = spanOf(draft, spot.part);
  replacePart(draft, spot.part, [
    { fromMm, toMm: atMm, from: spot.part.from, to: before },
    { fromMm: atMm, toMm, from: beyond, to: spot.part.to },
  ]);
  return true;
}

interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
  readonly from: NodeId;
  readonly to: NodeId;
}

function replacePart(draft: NetworkDraft, part: NetworkEdge, stretches: readonly Stretch[]): void {
  const { legId } = part;
  if (legId === null) return;
  draft.edges.delete(part.id);
  draft.spans.delete(part.id);
  draft.cutLegs.add(legId);
  for (const stretch of stretches) {
    const id = freshPartId(draft, legId);
    const toMm = stretch.toMm === Number.MAX_VALUE ? null : stretch.toMm;
    const keepsOrigin = [stretch.from, stretch.to].some((node) => draft.nodes.get(node)?.kind === 'origin');
    draft.spans.set(id, { fromMm: stretch.fromMm, toMm });
    draft.edges.set(id, {
      ...part,
      id,
      from: stretch.from,
      to: stretch.to,
      originEnd: keepsOrigin ? part.originEnd : null,
      partMm: toMm === null ? null : { fromMm: stretch.fromMm, toMm },
      lengthMm: toMm === null ? null : toMm - stretch.fromMm,
    });
  }
}

/** Ids that hold only until the parts are named in their order. */
function freshPartId(draft: NetworkDraft, legId: string): string {
  let n = 1;
  while (draft.edges.has(`${legId}/cut-${n}`)) n += 1;
  return `${legId}/cut-${n}`;
}

/** Brings the end of an edge that is at one node to another one. */
export function moveEnd(draft: NetworkDraft, edge: NetworkEdge, from: NodeId, to: NodeId): void {
  draft.edges.set(edge.id, {
    ...edge,
    from: edge.from === from ? to : edge.from,
    to: edge.to === from ? to : edge.to,
  });
}

/** Takes a cable out of use; a leg's is recorded as a removed stretch. */
export function removeCable(draft: NetworkDraft, edge: NetworkEdge, connectionId: string | null): void {
  const { fromMm, toMm } = spanOf(draft, edge);
  draft.edges.delete(edge.id);
  draft.spans.delete(edge.id);
  if (edge.legId !== null) recordRemoved(draft, { legId: edge.legId, fromMm, toMm }, connectionId);
}

function recordRemoved(
  draft: NetworkDraft,
  { legId, fromMm, toMm }: { legId: string; fromMm: number; toMm: number },
  connectionId: string | null,
): void {
  if (fromMm === toMm) return;
  const endMm = toMm === Number.MAX_VALUE ? null : toMm;
  const startMm = endMm === null && fromMm === 0 ? null : fromMm;
  draft.removed.push({ legId, fromMm: startMm, toMm: endMm, connectionId });
}

/**
 * Opens a leg: what lies between its two sides is removed, the kept stretches keep their lengths and are
 * brought to the sides' nodes.
 *
 * @returns the problem, if the leg is not there any more; then nothing is changed. A joint of an earlier
 * connection that lies in the removed stretch is reported as `joint-cut-away`.
 */
export function openLeg(
  draft: NetworkDraft,
  connectionId: string,
  { legId, fromSide, toSide }: LegOpening,
): EditProblem['code'] | null {
  const parts = partsOfLeg(draft, legId);
  const ends = draft.legEnds.get(legId);
  // A side can be lifted only where the leg still arrives.
  if (fromSide === 'lifted' && parts[0]?.from !== ends?.from) return 'leg-gone';
  if (toSide === 'lifted' && parts.at(-1)?.to !== ends?.to) return 'leg-gone';
  const start = fromSide === 'lifted' ? null : spotInLeg(draft, legId, { ...fromSide, prefer: 'last' });
  const end = toSide === 'lifted' ? null : spotInLeg(draft, legId, { ...toSide, prefer: 'first' });
  if ((fromSide !== 'lifted' && !start) || (toSide !== 'lifted' && !end)) return 'leg-gone';
  const first = start ? parts.indexOf(start.part) : 0;
  // Two cuts at the place of an older joint: both are made on the same side of it.
  const last = Math.max(first, end ? parts.indexOf(end.part) : parts.length - 1);
  if (last > first) reportProblem(draft, connectionId, 'joint-cut-away', legId);
  for (const [index, part] of parts.entries()) {
    if (index < first || index > last) continue;
    trimPart(draft, part, {
      connectionId,
      fromSide: index === first ? fromSide : 'lifted',
      toSide: index === last ? toSide : 'lifted',
    });
  }
  return null;
}

function trimPart(
  draft: NetworkDraft,
  part: NetworkEdge,
  opening: { connectionId: string; fromSide: OpenedSide; toSide: OpenedSide },
): void {
  const { fromSide, toSide, connectionId } = opening;
  const { fromMm, toMm } = spanOf(draft, part);
  const startMm = fromSide === 'lifted' ? fromMm : fromSide.atMm;
  const endMm = toSide === 'lifted' ? toMm : toSide.atMm;
  const kept: Stretch[] = [];
  if (fromSide !== 'lifted') kept.push({ fromMm, toMm: startMm, from: part.from, to: fromSide.node });
  if (toSide !== 'lifted') kept.push({ fromMm: endMm, toMm, from: toSide.node, to: part.to });
  replacePart(draft, part, kept);
  if (part.legId !== null)
    recordRemoved(draft, { legId: part.legId, fromMm: startMm, toMm: endMm }, connectionId);
}
