import { terminalCapacity } from '#data/standards/terminal-capacity.ts';
import type { Point, PointKind } from '#model/installation.ts';
import { movesAway } from '../circuit/moved-away.ts';
import type { NetworkNode } from '../circuit/network.ts';
import { isGuess } from '../plan/is-guess.ts';
import type { TerminalFill } from './things.ts';
import { circuitIdOf, type WiringIndex } from './wiring-index.ts';

/** What one terminal takes: so many cables, and so much area in all. */
interface TerminalCapacity {
  readonly cables: number;
  readonly areaMm2: number;
}

/** What the terminals of any make take; many take more, which the maker's sheet then says. */
const plugAccessories: TerminalCapacity = {
  cables: Math.max(...terminalCapacity.rows.map((row) => row.conductors)),
  areaMm2: Math.max(...terminalCapacity.rows.map((row) => row.conductors * row.areaMm2)),
};

/** Cooker control units take 10 mm² in and 6 mm² out and more. From memory; the maker's sheet wins. */
const cookerControls: TerminalCapacity = { cables: 3, areaMm2: 20 };

function capacityOf(kind: PointKind): TerminalCapacity {
  return kind === 'cooker-control' ? cookerControls : plugAccessories;
}

/**
 * The conductors in every accessory's line terminal, a fused unit's two sides apart, sorted by node id.
 * Where no leg reaches a point, the cables seen at its plate count; where nobody looked, the number is
 * assumed by its role (`counted` is then false) and the area is not known.
 */
export function terminalFills(index: WiringIndex): readonly TerminalFill[] {
  return index.input.proposed.nodes
    .filter((node) => node.kind === 'terminals' || node.kind === 'load-terminals')
    .map((node) => terminalFill(index, node))
    .toSorted((a, b) => (a.nodeId < b.nodeId ? -1 : 1));
}

function terminalFill(index: WiringIndex, node: NetworkNode): TerminalFill {
  const point = node.pointId === null ? undefined : index.pointById.get(node.pointId);
  const now = index.cablesAt.get(node.id) ?? [];
  const foundLegs = index.foundCablesAt.get(foundNodeId(index, node, point))?.length ?? 0;
  const newCables = now.filter((edge) => edge.state === 'new').length;
  const kept = now.length - newCables;
  const unrecorded = now.filter((edge) => edge.state === 'found' && edge.legId === null);
  const before = cablesBefore(node, surveyedPoint(index, point), foundLegs);
  // Cables that no leg tells of stay where they are, but for those that the scheme lifts.
  const untold = Math.max(0, before.cables - Math.max(foundLegs, kept));
  const lifted = (index.input.proposed.lifted ?? []).filter(({ nodeId }) => nodeId === node.id).length;
  const hidden = Math.max(0, untold - lifted);
  const areas = now.map((edge) => edge.cable?.lineMm2 ?? null);
  const isKnown = hidden === 0 && areas.every((area) => area !== null);
  const capacity = capacityOf(point?.kind ?? 'fused-unit');
  return {
    nodeId: node.id,
    pointId: node.pointId,
    circuitId: circuitIdOf(index, node),
    cables: now.length + hidden,
    areaMm2: isKnown ? areas.reduce((sum: number, area) => sum + (area ?? 0), 0) : null,
    newCables,
    capacityCables: capacity.cables,
    capacityMm2: capacity.areaMm2,
    counted: before.counted,
    affected:
      newCables > 0 ||
      kept - unrecorded.length !== foundLegs ||
      lifted > 0 ||
      // An old cable that no leg records runs from where it stays as it was: only its other end is new there.
      unrecorded.some((edge) => edge.to === node.id),
  };
}

/** The point that the survey looked at: of a replacement that takes its cables over, the one that it replaces. */
function surveyedPoint(index: WiringIndex, point: Point | undefined): Point | undefined {
  if (point?.replaces === undefined || isExtendedTo(index, point)) return point;
  return index.pointById.get(point.replaces) ?? point;
}

/** Whether what replaces a point stands elsewhere, so that the old cables end in the old box and new ones lead on to it. */
function isExtendedTo(index: WiringIndex, point: Point): boolean {
  const old = index.pointById.get(point.replaces ?? '');
  return old !== undefined && movesAway(old, point) && (index.foundCablesAt.get(old.id) ?? []).length > 0;
}

/** A point that takes another's place takes over its cables: what was found stands under the old id. */
function foundNodeId(index: WiringIndex, node: NetworkNode, point: Point | undefined): string {
  if (!point?.replaces || !node.id.startsWith(point.id) || isExtendedTo(index, point)) return node.id;
  return point.replaces + node.id.slice(point.id.length);
}

function cablesBefore(
  node: NetworkNode,
  point: Point | undefined,
  foundLegs: number,
): { readonly cables: number; readonly counted: boolean } {
  if (!point || point.status === 'wanted' || node.kind === 'load-terminals') {
    return { cables: foundLegs, counted: true };
  }
  const seen = point.asFound?.cablesSeen;
  const wasSeen = point.certainty?.cablesSeen ?? point.certainty?.asFound;
  if (seen !== undefined) {
    return { cables: Math.max(seen, foundLegs), counted: foundLegs > 0 || !isGuess(wasSeen) };
  }
  if (foundLegs > 0) return { cables: foundLegs, counted: true };
  return { cables: point.asFound?.role === 'spur' ? 1 : 2, counted: false };
}
