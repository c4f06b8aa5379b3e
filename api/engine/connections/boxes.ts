import type { Face, Wall } from '#model/building.ts';
import type { NetworkEdge, NodeId } from '../circuit/network.ts';
import { isGuess } from '../plan/is-guess.ts';
import type { Position } from '../plan/plane.ts';
import type { Run, Segment } from '../ways/run.ts';
import { boxBuild } from './box-build.ts';
import { type BoxDepths, boxDepths, fittedDepthMm, frameDepthMm, STOCK_DEPTHS_MM } from './box-depth.ts';
import { type Fitting, gangsOf } from './fittings.ts';
import type { BackBox, TerminalFill } from './things.ts';
import { positionOf, type WiringIndex } from './wiring-index.ts';

/** Every back box that the scheme fits, exchanges or puts another cable into, sorted by id. */
export function backBoxes(
  index: WiringIndex,
  fittings: readonly Fitting[],
  fills: readonly TerminalFill[],
): readonly BackBox[] {
  const fillOf = new Map(fills.map((fill) => [fill.nodeId, fill]));
  return fittings
    .filter((fitting) => isTouched(fitting, fillOf))
    .map((fitting) => backBox(index, fitting, fillOf))
    .toSorted((a, b) => (a.id < b.id ? -1 : 1));
}

function isTouched(fitting: Fitting, fillOf: ReadonlyMap<NodeId, TerminalFill>): boolean {
  return (
    fitting.isNew ||
    fitting.remedies.length > 0 ||
    fitting.nodeIds.some((nodeId) => fillOf.get(nodeId)?.affected === true)
  );
}

function backBox(index: WiringIndex, fitting: Fitting, fillOf: ReadonlyMap<NodeId, TerminalFill>): BackBox {
  const cables = fitting.nodeIds.reduce((sum, nodeId) => sum + (fillOf.get(nodeId)?.cables ?? 0), 0);
  const own = index.input.firmTerms?.boxDepths;
  const depthsFor: DepthsFor = (count) => boxDepths({ ...fitting, cables: count }, own);
  const depths = depthsFor(cables);
  const spot = wallSpot(index, fitting);
  return {
    id: fitting.id,
    pointId: fitting.point?.id ?? null,
    gangs: fitting.gangs,
    build: boxBuild(fitting.mount, spot.wall, spot.face),
    wallCore: spot.wall?.core ?? null,
    lining: spot.face?.lining ?? null,
    finish: spot.face?.finish ?? null,
    minimumDepthMm: depths.minimumMm,
    preferredDepthMm: depths.preferredMm,
    foundDepthMm: foundDepthMm(fitting),
    ...decided(fitting, cables, depthsFor),
    cables,
    party: spot.wall?.party ?? false,
    knockOuts: Math.max(0, cables - inTubes(index, fitting)),
    state: fitting.surveyed === null ? 'new' : 'found',
  };
}

function foundDepthMm(fitting: Fitting): number | null {
  return fitting.surveyed?.asFound?.boxDepthMm ?? null;
}

/** The depths that the accessory wants with so many cables. */
type DepthsFor = (cables: number) => BoxDepths;

type Decided = Pick<BackBox, 'action' | 'cause' | 'depthMm' | 'frameMm'>;

/** What becomes of the box. A depth given by the job is fitted as given: whether it serves is for a rule to say. */
function decided(fitting: Fitting, cables: number, depthsFor: DepthsFor): Decided {
  const depths = depthsFor(cables);
  const given = fitting.point?.box?.depthMm;
  const newDepthMm = given ?? fittedDepthMm(depths.minimumMm);
  if (fitting.surveyed === null) return { action: 'fit', cause: null, depthMm: newDepthMm };
  const foundMm = foundDepthMm(fitting);
  const cause = reBoxCause(fitting, cables, depthsFor);
  if (cause !== null)
    return framed(fitting, cause, depths) ?? { action: 're-box', cause, depthMm: newDepthMm };
  const unknown = { action: 'unknown', cause: null, ...frameIfShallow(fitting, depths) } as const;
  if (foundMm === null) return { ...unknown, depthMm: depths.minimumMm };
  return isDepthGuessed(fitting)
    ? { ...unknown, depthMm: foundMm }
    : { action: 'keep', cause: null, depthMm: foundMm };
}

/** A spacer frame in place of another box, where a person decided so and depth alone is what it lacks; null: none. */
function framed(fitting: Fitting, cause: BackBox['cause'], depths: BoxDepths): Decided | null {
  const foundMm = foundDepthMm(fitting);
  const lacksDepth = cause === 'third-cable' || cause === 'too-shallow';
  if (!lacksDepth || foundMm === null || !isToBeFramed(fitting)) return null;
  const frameMm = frameDepthMm(foundMm, depths.minimumMm);
  return { action: 'frame', cause, frameMm, depthMm: foundMm + frameMm };
}

/** The frame over a box of which nobody knows the depth, should it be the shallowest that is usual. */
function frameIfShallow(fitting: Fitting, { minimumMm }: BoxDepths): Pick<BackBox, 'frameMm'> {
  return isToBeFramed(fitting) ? { frameMm: frameDepthMm(STOCK_DEPTHS_MM[0], minimumMm) } : {};
}

const isToBeFramed = ({ point, surveyed }: Fitting): boolean =>
  (point?.shallowBox ?? surveyed?.shallowBox) === 'frame';

function reBoxCause(fitting: Fitting, cables: number, depthsFor: DepthsFor): BackBox['cause'] {
  if (fitting.remedies.includes('re-box')) return 'remedy';
  const foundGangs = gangsFound(fitting);
  if (foundGangs !== null && foundGangs !== fitting.gangs) return 'replaced';
  const foundMm = foundDepthMm(fitting);
  const box = fitting.point?.box;
  if (box && box.depthMm !== foundMm) return 'wanted';
  // Lugs that hold no screw any more hold no plate either; a sentence about them is for people to read.
  if (fitting.surveyed?.asFound?.lugs === false) return 'replaced';
  if (foundMm === null || foundMm >= depthsFor(cables).minimumMm) return null;
  const withTwoCables = depthsFor(Math.min(cables, 2));
  return foundMm >= withTwoCables.minimumMm ? 'third-cable' : 'too-shallow';
}

/** Whether the depth was written down without a plate being taken off. */
function isDepthGuessed({ surveyed }: Fitting): boolean {
  return isGuess(surveyed?.certainty?.boxDepthMm ?? surveyed?.certainty?.asFound);
}

function gangsFound({ surveyed }: Fitting): number | null {
  return surveyed === null ? null : gangsOf(surveyed.kind, surveyed.modules?.length ?? 0);
}

interface WallOfBox {
  readonly wall: Wall | null;
  readonly face: Face | null;
}

function wallSpot(index: WiringIndex, fitting: Fitting): WallOfBox {
  const spot = positionOfFitting(index, fitting)?.onWall;
  const wall = spot ? index.input.plan.wallById.get(spot.wallId)?.wall : undefined;
  return spot && wall ? { wall, face: wall.faces[spot.side] } : { wall: null, face: null };
}

function positionOfFitting(index: WiringIndex, fitting: Fitting): Position | null {
  for (const pointId of [fitting.point?.id, fitting.surveyed?.id]) {
    const position = pointId === undefined ? undefined : index.input.plan.positionOfPoint.get(pointId);
    if (position) return position;
  }
  const node = index.nodeById.get(fitting.id);
  return node ? positionOf(index, node) : null;
}

/** Cables that come into the box through a tube: new ones by their run, old ones only where a person pinned the tube. */
function inTubes(index: WiringIndex, fitting: Fitting): number {
  return fitting.nodeIds
    .flatMap((nodeId) => (index.cablesAt.get(nodeId) ?? []).map((edge) => endOf(index, edge, nodeId)))
    .filter((segment) => segment?.containment === 'oval' || segment?.containment === 'conduit').length;
}

function endOf(index: WiringIndex, edge: NetworkEdge, nodeId: NodeId): Segment | undefined {
  const isOld = edge.legId !== null;
  const run = isOld
    ? index.input.foundRuns.get(edge.legId ?? '')
    : (index.runsAt.get(nodeId) ?? []).find((candidate) => candidate.id === edge.id);
  const segment = run && nearestSegment(run, nodeId);
  return isOld && segment?.certainty !== 'pinned' ? undefined : segment;
}

function nearestSegment(run: Run, nodeId: NodeId): Segment | undefined {
  if (run.from.nodeId === nodeId) return run.segments[0];
  return run.to.nodeId === nodeId ? run.segments.at(-1) : undefined;
}
