import type { Medium } from '#model/cable.ts';
import type { Joint } from '#model/installation.ts';
import { isInOldBox } from '../circuit/moved-away.ts';
import type { NetworkNode } from '../circuit/network.ts';
import type { Position } from '../plan/plane.ts';
import type { Run, Segment } from '../ways/run.ts';
import { jointCapacity, takesAll } from './joint-capacity.ts';
import type { CableJoint, FusedUnit, Upstream } from './things.ts';
import { circuitIdOf, positionOf, type WiringIndex } from './wiring-index.ts';

type Lies = CableJoint['lies'];

/**
 * Every place where cables are joined outside terminals, sorted by id. A new joint that the job does not
 * describe is derived: what the cable's size fits and the place allows. A found one that nobody looked at is
 * `unknown`, and its rating is then nought: nothing is known of it. `conductorAreaMm2` is the largest line
 * conductor that ends there, nought when no cable's size is known.
 */
export function cableJoints(index: WiringIndex, units: readonly FusedUnit[]): readonly CableJoint[] {
  return index.input.proposed.nodes
    .filter((node) => node.kind === 'joint')
    .map((node) => cableJoint(index, units, node))
    .toSorted((a, b) => (a.id < b.id ? -1 : 1));
}

function cableJoint(index: WiringIndex, units: readonly FusedUnit[], node: NetworkNode): CableJoint {
  const cables = index.cablesAt.get(node.id) ?? [];
  const point = node.pointId === null ? undefined : index.pointById.get(node.pointId);
  const place = index.placeOf.get(node.id);
  const position = positionOf(index, node);
  const lies = liesOf(index, node, position);
  const conductorAreaMm2 = Math.max(0, ...cables.map((edge) => edge.cable?.lineMm2 ?? 0));
  const areas = cables.map((edge) => edge.cable?.lineMm2 ?? null);
  const given = node.joint ?? point?.joint ?? null;
  const make = makeOf(node, given, { lies, conductorAreaMm2, cables: cables.length });
  return {
    id: node.id,
    circuitId: circuitIdOf(index, node),
    connectionId: node.connectionId,
    pointId: node.pointId,
    legId: node.inLeg?.legId ?? null,
    ...make,
    takes: make.source === 'unknown' ? null : jointCapacity(given ?? make),
    upstream: upstreamOf(index, units, node),
    inRing: place?.role === 'ring' || place?.role === 'claimed-ring',
    cables: cables.length,
    newCables: cables.filter((edge) => edge.state === 'new').length,
    conductorAreaMm2,
    areaMm2: areas.every((area) => area !== null)
      ? areas.reduce((sum: number, area) => sum + (area ?? 0), 0)
      : null,
    position,
    lies,
    state: node.state,
  };
}

type Make = Pick<CableJoint, 'kind' | 'source' | 'ratingA' | 'accessible'>;

function makeOf(
  node: NetworkNode,
  given: Joint | null,
  at: { readonly lies: Lies; readonly conductorAreaMm2: number; readonly cables: number },
): Make {
  if (given) {
    return { kind: given.kind, source: 'given', ratingA: given.ratingA, accessible: given.accessible };
  }
  if (node.state === 'found') return { kind: 'screw', source: 'unknown', ratingA: 0, accessible: null };
  const accessible = accessibleWhere[at.lies];
  if (at.lies === 'box') return { kind: 'lever', source: 'derived', ratingA: 32, accessible };
  return { ...derivedKind(at), source: 'derived', accessible };
}

/**
 * The joint that the size and the number of its conductors fit: a maintenance-free box as far as it takes them, 32 A by its
 * maintenance-free rating; more cables in lever connectors, crimps above 4 to 6 mm², and screw boxes beyond. Source:
 * `joint-capacity.ts`; the rest from memory.
 */
function derivedKind({
  conductorAreaMm2,
  cables,
}: Pick<CableJoint, 'conductorAreaMm2' | 'cables'>): Pick<CableJoint, 'kind' | 'ratingA'> {
  const box = { kind: 'maintenance-free', ratingA: 32 } as const;
  if (takesAll(jointCapacity(box), { cables, conductorAreaMm2, areaMm2: null })) return box;
  if (conductorAreaMm2 <= 4) return { kind: 'lever', ratingA: 32 };
  if (conductorAreaMm2 <= 6) return { kind: 'crimp', ratingA: 41 };
  return { kind: 'screw', ratingA: 60 };
}

const accessibleWhere: Readonly<Record<Lies, boolean | null>> = {
  'floor-void': false,
  'ceiling-void': false,
  wall: false,
  loft: true,
  surface: true,
  box: true,
  unknown: null,
};

function upstreamOf(index: WiringIndex, units: readonly FusedUnit[], node: NetworkNode): Upstream {
  const place = index.placeOf.get(node.id);
  if (place && place.behindUnit !== null) {
    const unit = units.find((candidate) => candidate.loadNode === place.behindUnit);
    return { kind: 'fuse', ratingA: unit?.fuseA ?? place.fuseA };
  }
  const device = index.circuitById.get(circuitIdOf(index, node))?.device;
  return device ? { kind: 'device', ratingA: device.ratingA } : { kind: 'unknown', ratingA: null };
}

function liesOf(index: WiringIndex, node: NetworkNode, position: Position | null): Lies {
  // What is left where a point was taken out stays in that point's box.
  if (isInOldBox(node.id)) return 'box';
  const leg = node.inLeg ? index.input.foundRuns.get(node.inLeg.legId) : undefined;
  const segment = leg && position ? segmentAt(leg, position) : undefined;
  if (segment) return liesIn[segment.medium];
  const end = (index.runsAt.get(node.id) ?? []).flatMap((run) => endSegment(run, node.id) ?? [])[0];
  if (end) return liesIn[end.medium];
  return position ? liesAt(index, position) : 'unknown';
}

const liesIn: Readonly<Record<Medium, Lies>> = {
  'void-along': 'floor-void',
  'void-across': 'floor-void',
  'void-open': 'floor-void',
  'wall-chase': 'wall',
  'stud-cavity': 'wall',
  'through-wall': 'wall',
  riser: 'wall',
  'surface-clipped': 'surface',
  'surface-channel': 'surface',
  loft: 'loft',
  buried: 'unknown',
  outside: 'unknown',
};

function liesAt(index: WiringIndex, position: Position): Lies {
  if (position.heightMm < 0) return 'floor-void';
  const storey = index.input.plan.storeyById.get(position.storeyId)?.storey;
  if (storey && position.heightMm > storey.heightMm) return storey.ceiling.loft ? 'loft' : 'ceiling-void';
  return position.onWall ? 'wall' : 'unknown';
}

function endSegment(run: Run, nodeId: string): Segment | undefined {
  return run.from.nodeId === nodeId ? run.segments[0] : run.segments.at(-1);
}

/** The stretch that a spot lies on; a spot more than a finger's breadth off the path is on none. */
function segmentAt(run: Run, position: Position): Segment | undefined {
  return run.segments.find((segment) => offPathMm(segment, position) <= 10);
}

/** How much longer the way over the spot is than the straight stretch, mm. */
function offPathMm(segment: Segment, position: Position): number {
  return apartMm(segment.from, position) + apartMm(position, segment.to) - apartMm(segment.from, segment.to);
}

function apartMm(a: Position, b: Position): number {
  return Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1], a.levelMm - b.levelMm);
}
