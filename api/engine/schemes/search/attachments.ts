import type { Medium } from '#model/cable.ts';
import type { Tap } from '#model/scheme.ts';
import type { CircuitShape, NodePlace } from '../../circuit/shape.ts';
import { isFollowed } from '../../plan/is-followed.ts';
import type { Position } from '../../plan/plane.ts';
import { positionInLeg } from '../../ways/position-in-leg.ts';
import type { Segment } from '../../ways/run.ts';
import { endMm } from '../../ways/run-length.ts';
import type { WayEnd } from '../../ways/way-cost.ts';
import type { Attachment } from './attach-columns.ts';
import { endInLeg, endOfNode, type SearchGround } from './search-ground.ts';
import { endsWorks, joinedAlone, type Workshop } from './workshop.ts';

/** Cables that an accessory's terminals take: a ring point that has so many has its spur already. Source: BS 1363-2. */
export const CABLES_AT_POINT = 3;

/** Circuits that sockets and small appliances may be added to: not those of one cooker or heater. */
export function isJoinable(ground: SearchGround, circuitId: string): boolean {
  const use = ground.house.job.circuits.find(({ id }) => id === circuitId)?.use;
  return use === 'sockets' || use === 'kitchen' || use === 'other';
}

/** The points of a circuit that were there (or stand in for one that was), with where they are in it. */
export function foundPlaces(ground: SearchGround, shape: CircuitShape): readonly NodePlace[] {
  return shape.places.filter(({ nodeId }) => {
    const node = ground.nodeById.get(nodeId);
    const point = ground.house.plan.pointById.get(node?.pointId ?? '');
    return node?.kind === 'terminals' && (point?.status === 'existing' || point?.replaces !== undefined);
  });
}

/** A place to join on with what that takes there; null where it has no place in the building. */
function attachment(
  shop: Workshop,
  {
    key,
    tap,
    circuitId,
    end,
  }: Pick<Attachment, 'key' | 'tap' | 'circuitId'> & { readonly end: Attachment['end'] | null },
): readonly Attachment[] {
  const { sample } = shop;
  if (end === null || sample === null) return [];
  return [{ key, tap, end, circuitId, ends: endsWorks(shop, key, [joinedAlone(tap, sample)]) }];
}

/**
 * The points of a ring that may take a third conductor: on the ring by their legs or by the survey's word, without a
 * spur of their own, and not found with three cables.
 */
export function ringPointAttachments(shop: Workshop, shape: CircuitShape): readonly Attachment[] {
  const { ground } = shop;
  const rooted = new Set(shape.spurs.map(({ rootNode }) => rootNode));
  return foundPlaces(ground, shape)
    .filter(({ nodeId, role }) => (role === 'ring' || role === 'claimed-ring') && !rooted.has(nodeId))
    .filter(({ nodeId }) => !isFull(ground, nodeId))
    .flatMap(({ nodeId }) => {
      const tap: Tap = { point: ground.nodeById.get(nodeId)?.pointId ?? nodeId };
      const end = endOfNode(ground, nodeId);
      return attachment(shop, { key: `point/${nodeId}`, tap, end, circuitId: shape.circuitId });
    });
}

function isFull({ house }: SearchGround, nodeId: string): boolean {
  const own = house.plan.pointById.get(nodeId);
  const point = own?.replaces === undefined ? own : (house.plan.pointById.get(own.replaces) ?? own);
  return (point?.asFound?.cablesSeen ?? 0) >= CABLES_AT_POINT || own?.kind === 'joint';
}

/** The origin of a ring circuit: one further cable at its device. */
export function originAttachment(shop: Workshop, { circuitId }: CircuitShape): readonly Attachment[] {
  const end = endOfNode(shop.ground, circuitId);
  return attachment(shop, { key: `origin/${circuitId}`, tap: { origin: circuitId }, end, circuitId });
}

/** Whether a leg may be cut: somebody has followed its way, or a person allows it all the same. */
export function mayCut(
  { house, allowAssumedLegs }: Pick<SearchGround, 'house' | 'allowAssumedLegs'>,
  legId: string,
): boolean {
  return allowAssumedLegs.has(legId) || isFollowed(house.job.legs.find(({ id }) => id === legId));
}

/** The legs that the ring is made of and that are whole, in its order. */
export function wholeLegs({ ringEdges }: CircuitShape): readonly string[] {
  return ringEdges.flatMap(({ id, legId, state }) => (legId === id && state === 'found' ? [legId] : []));
}

/** Cuts keep this far from a leg's ends, mm of cable: nearer, its terminals serve. */
const FROM_END_MM = 300;

/** How far apart cuts are tried on a straight stretch, mm of path. */
const APART_MM = 1000;

/** In a wall there is no room for the box of a joint, and none comes near it again. Common practice, no source. */
const inWalls: ReadonlySet<Medium> = new Set(['wall-chase', 'stud-cavity', 'through-wall']);

/** On a surface a box is seen: it stands where channels meet, and not half way up an upright. Common practice, no source. */
const onSurfaces: ReadonlySet<Medium> = new Set(['surface-channel', 'surface-clipped']);

/** Into how many pieces a stretch is parted for joints; none within walls. */
function piecesOf({ medium, direction, lengthMm }: Segment): number {
  if (inWalls.has(medium)) return 0;
  if (onSurfaces.has(medium) && direction === 'vertical') return 1;
  return Math.max(1, Math.ceil(lengthMm / APART_MM));
}

/** Whether cable can be led to a joint on a surface there: on a wall that is drawn, and not somewhere under a ceiling. */
function isOnWall({ plan }: SearchGround['house'], position: Position, medium: Medium): boolean {
  const isDrawn = (plan.storeyById.get(position.storeyId)?.storey.walls.length ?? 0) > 0;
  return !isDrawn || !onSurfaces.has(medium) || position.onWall !== undefined;
}

/**
 * Spots in a leg where a joint is tried: corners of its way, and spots a metre apart between them, but for what runs in walls or up
 * them, and on surfaces only where there is a wall behind; in mm of cable from its `from`.
 */
export function spotsInLeg({ house }: Pick<SearchGround, 'house'>, legId: string): readonly number[] {
  const run = house.foundRuns.get(legId);
  if (run === undefined || run.segments.length === 0 || run.lengthMm === null || run.routeMm === 0) return [];
  const betweenMm = Math.max(0, run.lengthMm - run.endsMm);
  const startMm = endMm(run.from.kind, house.allowances);
  const scale = betweenMm / run.routeMm;
  const spots: number[] = [];
  const longMm = run.lengthMm;
  let passedMm = 0;
  for (const segment of run.segments) {
    const pieces = piecesOf(segment);
    for (let i = 0; i < pieces; i += 1) {
      const mm = Math.round(startMm + (passedMm + (segment.lengthMm * i) / pieces) * scale);
      if (mm < FROM_END_MM || mm > longMm - FROM_END_MM) continue;
      const position = positionInLeg(run, mm, house.allowances);
      if (position !== null && isOnWall(house, position, segment.medium)) spots.push(mm);
    }
    passedMm += segment.lengthMm;
  }
  return [...new Set(spots)];
}

/** A spot in a leg with its place in the building. */
export interface JointSpot {
  readonly alongMm: number;
  readonly end: WayEnd;
}

/** The spots in a leg that have a place. */
export function jointSpots(ground: SearchGround, legId: string): readonly JointSpot[] {
  return spotsInLeg(ground, legId).flatMap((alongMm) => {
    const end = endInLeg(ground, legId, alongMm);
    return end === null ? [] : [{ alongMm, end }];
  });
}

/** Joints that may be cut into a leg for a further cable, one at every spot. */
export function jointAttachments(shop: Workshop, circuitId: string, legId: string): readonly Attachment[] {
  const { ground, sample } = shop;
  const spots = jointSpots(ground, legId);
  const [first] = spots;
  if (first === undefined || sample === null) return [];
  // Joints of one leg are alike wherever they are.
  const ends = endsWorks(shop, `joint/${legId}`, [
    joinedAlone({ leg: legId, alongMm: first.alongMm }, sample),
  ]);
  return spots.map(({ alongMm, end }) => ({
    key: `joint/${legId}/${alongMm}`,
    tap: { leg: legId, alongMm },
    ...{ end, circuitId, ends },
  }));
}
