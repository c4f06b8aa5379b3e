import type { End } from '#model/cable.ts';
import type { Connection, Cut } from '#model/scheme.ts';
import { bringJoint, cableLayer } from './draft-cables.ts';
import { alongWithin, type LegOpening, type OpenedSide, openLeg } from './draft-legs.ts';
import { arrivalNode, nodeToFeed } from './draft-terminals.ts';
import { addOldCable } from './draft-unrecorded-leg.ts';
import { inIdOrder } from './id-order.ts';
import type { LegEnds } from './leg-ends.ts';
import type { NodeId } from './network.ts';
import { type NetworkDraft, reportProblem } from './network-draft.ts';
import { loadSideOf } from './point-terminals.ts';

type RingExtension = Extract<Connection, { kind: 'ring-extension' }>;

/** One side of the extension: the neighbour there, how its old cable is cut, and where the cut end comes to. */
interface Side {
  readonly role: 'joint-out' | 'joint-back';
  readonly neighbour: NodeId;
  readonly cut: Cut;
  readonly cutAt: NodeId;
}

/**
 * Opens the ring between two neighbours and carries it through new points: `out` is the side of the first
 * of `between`, `back` the side of the second, whichever way the leg itself was written down.
 *
 * Without a leg between the two (a quoting visit) the neighbours alone say where: the kept old cable that a
 * joint or a cut end implies is an edge `<connectionId>/old-out` or `/old-back` of unknown length; with
 * `terminals` the old cable is noted as lifted there. No removed stretch is recorded, since no leg is known
 * that it would be of. The same is done, beside the
 * problem, when the leg is gone or the two are no neighbours.
 */
export function editRingExtension(draft: NetworkDraft, connection: RingExtension): void {
  const { id, between, through } = connection;
  const [a, b] = [nodeOfEnd(draft, between[0]), nodeOfEnd(draft, between[1])];
  if (a === null || b === null) {
    const lost = a === null ? between[0] : between[1];
    reportProblem(draft, id, 'point-not-connected-here', 'origin' in lost ? lost.origin : lost.point);
    return;
  }
  const points = through.flatMap((pointId) => nodeToFeed(draft, id, pointId) ?? []);
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) {
    reportProblem(draft, id, 'nothing-to-connect', id);
    return;
  }
  const out = sideOf(id, { role: 'joint-out', neighbour: a, cut: connection.out, next: first });
  const back = sideOf(id, { role: 'joint-back', neighbour: b, cut: connection.back, next: last });
  const legId = legBetween(draft, connection, { from: a, to: b });
  if (legId === null || !openBetween(draft, id, { legId, out, back }))
    for (const side of [out, back]) partUnrecorded(draft, id, side);
  layNewCables(draft, connection, { out, back, points });
}

function sideOf(
  connectionId: string,
  { role, neighbour, cut, next }: Omit<Side, 'cutAt'> & { readonly next: NodeId },
): Side {
  const cutAt = { terminals: neighbour, joint: `${connectionId}/${role}`, 'old-cable': next }[cut.how];
  return { role, neighbour, cut, cutAt };
}

/** The node of an end of `between`; null when it is a point that is gone, or wanted and not joined on yet. */
function nodeOfEnd(draft: NetworkDraft, end: End): NodeId | null {
  if ('origin' in end) return end.origin;
  const node = arrivalNode(draft, end.point);
  const point = draft.pointById.get(end.point);
  if (node === null || !point) return null;
  const at = end.side === 'load' && node === point.id ? loadSideOf(point, null) : node;
  const isTouched = [...draft.edges.values()].some(({ from, to }) => from === at || to === at);
  return isTouched || point.status !== 'wanted' ? at : null;
}

function joins(ends: LegEnds | undefined, { from, to }: LegEnds): boolean {
  if (!ends) return false;
  return (ends.from === from && ends.to === to) || (ends.from === to && ends.to === from);
}

/**
 * The leg that is opened: the one named, else the first by id that joins the two neighbours, at the told
 * end of the ring before others; null when there is none.
 */
function legBetween(draft: NetworkDraft, connection: RingExtension, neighbours: LegEnds): string | null {
  const { id, leg, between, circuit } = connection;
  if (leg !== undefined) {
    if (draft.legById.get(leg)?.circuit !== circuit) reportProblem(draft, id, 'leg-of-other-circuit', leg);
    if (!joins(draft.legEnds.get(leg), neighbours)) reportProblem(draft, id, 'leg-elsewhere', leg);
    return leg;
  }
  const told = toldEnds(between);
  const candidates = [...draft.legEnds.keys()]
    .filter((legId) => joins(draft.legEnds.get(legId), neighbours))
    .toSorted(inIdOrder);
  const atToldEnd = candidates.find((legId) => {
    const each = draft.legById.get(legId);
    return each !== undefined && toldEnds([each.from, each.to]).some((end) => told.includes(end));
  });
  const chosen = atToldEnd ?? candidates[0] ?? null;
  const hasLegs = [...draft.legById.values()].some((each) => each.circuit === circuit);
  if (chosen === null && hasLegs) reportProblem(draft, id, 'not-neighbours', id);
  return chosen;
}

function toldEnds(ends: readonly End[]): readonly ('A' | 'B')[] {
  return ends.flatMap((end) => ('origin' in end && end.end !== undefined ? [end.end] : []));
}

function openBetween(
  draft: NetworkDraft,
  connectionId: string,
  { legId, out, back }: { legId: string; out: Side; back: Side },
): boolean {
  const ends = draft.legEnds.get(legId);
  // A leg that joins other points is opened as it lies, unless one of its ends says otherwise.
  const isReversed =
    ends?.from !== out.neighbour && (ends?.to === out.neighbour || ends?.from === back.neighbour);
  const opened = ({ cut, cutAt }: Side): OpenedSide =>
    cut.how === 'terminals'
      ? 'lifted'
      : { atMm: alongWithin(draft, connectionId, { legId, alongMm: cut.alongMm }), node: cutAt };
  const [outSide, backSide] = [opened(out), opened(back)];
  const [fromSide, toSide] = isReversed ? [backSide, outSide] : [outSide, backSide];
  const code = openLeg(draft, connectionId, inCutOrder(draft, connectionId, { legId, fromSide, toSide }));
  if (code) {
    reportProblem(draft, connectionId, code, legId);
    return false;
  }
  bringCutJoint(draft, connectionId, out, { legId, opened: outSide });
  bringCutJoint(draft, connectionId, back, { legId, opened: backSide });
  return true;
}

/** Cuts that lie the wrong way round would keep one stretch twice: they are reported, and changed over. */
function inCutOrder(draft: NetworkDraft, connectionId: string, opening: LegOpening): LegOpening {
  const { legId, fromSide, toSide } = opening;
  if (fromSide === 'lifted' || toSide === 'lifted' || fromSide.atMm <= toSide.atMm) return opening;
  reportProblem(draft, connectionId, 'cut-order', legId);
  return {
    legId,
    fromSide: { ...fromSide, atMm: toSide.atMm },
    toSide: { ...toSide, atMm: fromSide.atMm },
  };
}

function bringCutJoint(
  draft: NetworkDraft,
  connectionId: string,
  { role, cut }: Side,
  { legId, opened }: { legId: string; opened: OpenedSide },
): void {
  if (cut.how !== 'joint' || opened === 'lifted') return;
  bringJoint(draft, connectionId, { role, joint: cut.joint, inLeg: { legId, alongMm: opened.atMm } });
}

/** Lifts the old cable that no leg records at the neighbour, or keeps it up to where it is cut. */
function partUnrecorded(draft: NetworkDraft, connectionId: string, side: Side): void {
  if (side.cut.how === 'terminals') {
    draft.lifted.push({ nodeId: side.neighbour, connectionId });
    return;
  }
  const joint = side.cut.how === 'joint' ? { made: side.cut.joint } : null;
  addOldCable(draft, connectionId, { ...side, joint });
}

/** The new cables in order along the extension; none on a side where the old cable itself is brought in. */
function layNewCables(
  draft: NetworkDraft,
  connection: RingExtension,
  { out, back, points }: { out: Side; back: Side; points: readonly NodeId[] },
): void {
  const lay = cableLayer(draft, connection);
  const start = out.cut.how === 'old-cable' ? [] : [out.cutAt];
  const end = back.cut.how === 'old-cable' ? [] : [back.cutAt];
  const stops = [...start, ...points, ...end];
  for (const [index, stop] of stops.entries()) {
    const next = stops[index + 1];
    if (next !== undefined) lay(stop, next);
  }
}
