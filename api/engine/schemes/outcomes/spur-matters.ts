import type { End } from '#model/cable.ts';
import type { Job } from '#model/job.ts';
import type { Connection, Scheme, Tap } from '#model/scheme.ts';
import type { Worked } from '../../connections/worked.ts';
import { isGuess } from '../../plan/is-guess.ts';
import type { Position } from '../../plan/plane.ts';
import { positionInLeg } from '../../ways/position-in-leg.ts';
import { CABLES_AT_POINT, mayCut, spotsInLeg } from '../search/attachments.ts';
import { type House, workScheme } from '../work-scheme.ts';
import { labelOfPoint, type OpenMatter } from './open-matter.ts';

type Tapped = Extract<Connection, { readonly kind: 'spur' | 'fused-spur' }>;

/** So many other places to join on are laid and measured: those nearest as the crow flies. */
const PLACES_LAID = 3;

/** A change of storey counts for so much when places are ranked before they are laid, mm. A judgement, no source. */
const STOREY_MM = 3000;

/**
 * The points that new cable is to start from and whose plate nobody has taken off: they may be on a spur themselves, or
 * have no room for a further conductor. Then it starts from a joint in a leg that may be cut; where there is no such leg,
 * from another point of the circuit. By the scheme's connections; the matter is of the point, whatever scheme asks.
 */
export function spurMatters(house: House, worked: Worked): readonly OpenMatter[] {
  const { scheme } = worked;
  if (scheme === null) return [];
  // Two cables are not sent to one other point.
  const spoken = new Set<string>();
  return scheme.connections.flatMap((connection): readonly OpenMatter[] => {
    if (connection.kind !== 'spur' && connection.kind !== 'fused-spur') return [];
    if (!('point' in connection.from) || !isUnopened(worked.job, connection.from.point)) return [];
    const pointId = connection.from.point;
    const other = otherTap({ house, worked, scheme, connection, pointId, spoken });
    if (other === null) return [];
    if ('point' in other) spoken.add(other.point);
    return [matterOf(worked.job, { connection, pointId, other })];
  });
}

function matterOf(
  job: Job,
  {
    connection: { id },
    pointId,
    other,
  }: { readonly connection: Tapped; readonly pointId: string; readonly other: Tap },
): OpenMatter {
  const label = labelOfPoint(job, pointId);
  return {
    id: `spur/${pointId}`,
    kind: 'spur',
    subjects: [pointId, id],
    words: `Can ${label} take another cable?`,
    outcomes: [
      { id: 'takes', words: 'Yes: it is on the ring and has room', change: {} },
      {
        id: 'full',
        words: `No, a spur already or full: from ${tapWords(job, other)} instead`,
        change: { scheme: (one) => tappedAt(one, { connectionId: id, pointId, other }) },
      },
    ],
  };
}

/** Whether nobody has counted the cables of a point that is there and said nothing against it. */
function isUnopened({ points }: Job, pointId: string): boolean {
  const own = points.find(({ id }) => id === pointId);
  const point = points.find(({ id }) => id === own?.replaces) ?? own;
  if (point === undefined || point.status === 'wanted' || point.kind === 'joint') return false;
  const { asFound, certainty } = point;
  if (asFound?.role === 'spur') return false;
  return asFound?.cablesSeen === undefined || isGuess(certainty?.cablesSeen ?? certainty?.asFound);
}

interface ToTap {
  readonly house: House;
  readonly worked: Worked;
  readonly scheme: Scheme;
  readonly connection: Tapped;
  readonly pointId: string;
  /** Points that another cable would start from instead. */
  readonly spoken: ReadonlySet<string>;
}

/** Where the cable starts instead: of the nearest places that may be joined on at the one with the least new cable. */
function otherTap(toTap: ToTap): Tap | null {
  const { house, worked, scheme, connection, pointId } = toTap;
  const run = worked.runs.find(
    (one) =>
      one.connectionId === connection.id && (one.from.pointId === pointId || one.to.pointId === pointId),
  );
  const target = run?.from.pointId === pointId ? run.to.position : run?.from.position;
  const circuitId = house.job.points.find(({ id }) => id === pointId)?.circuit;
  if (target === null || target === undefined || circuitId === undefined) return null;
  const joints = jointTaps(house, circuitId);
  const places = joints.length > 0 ? joints : pointTaps(toTap, circuitId);
  const nearest = places
    .map((place) => ({ ...place, awayMm: awayMm(place.at, target) }))
    .toSorted((a, b) => a.awayMm - b.awayMm)
    .slice(0, PLACES_LAID);
  let best: { readonly tap: Tap; readonly cableMm: number } | null = null;
  for (const { tap } of nearest) {
    const tried = tappedAt(scheme, { connectionId: connection.id, pointId, other: tap });
    const cableMm = newCableMm(workScheme(house, tried), connection.id);
    if (cableMm !== null && (best === null || cableMm < best.cableMm)) best = { tap, cableMm };
  }
  return best?.tap ?? null;
}

interface Place {
  readonly tap: Tap;
  readonly at: Position;
}

/** Joints in the legs of a circuit whose way somebody has followed, one at every spot. */
function jointTaps(house: House, circuitId: string): readonly Place[] {
  const ground = { house, allowAssumedLegs: new Set<string>() };
  const ring = new Set(
    (house.foundShapes.get(circuitId)?.ringEdges ?? []).flatMap(({ legId }) =>
      legId === null ? [] : [legId],
    ),
  );
  return house.job.legs
    .filter(
      ({ id, circuit }) => circuit === circuitId && (ring.size === 0 || ring.has(id)) && mayCut(ground, id),
    )
    .flatMap(({ id }) =>
      spotsInLeg(ground, id).flatMap((alongMm): readonly Place[] => {
        const run = house.foundRuns.get(id);
        const at = run === undefined ? null : positionInLeg(run, alongMm, house.allowances);
        return at === null ? [] : [{ tap: { leg: id, alongMm }, at }];
      }),
    );
}

/** The other points of a circuit that nothing told speaks against, and that the scheme joins nothing on at. */
function pointTaps({ house, scheme, pointId, spoken }: ToTap, circuitId: string): readonly Place[] {
  const taken = new Set(
    scheme.connections.flatMap((one) => ('from' in one && 'point' in one.from ? [one.from.point] : [])),
  );
  return house.job.points
    .filter(
      ({ id, status, circuit, kind, asFound }) =>
        id !== pointId &&
        status === 'existing' &&
        circuit === circuitId &&
        (kind === 'socket-single' || kind === 'socket-twin') &&
        !taken.has(id) &&
        !spoken.has(id) &&
        asFound?.role !== 'spur' &&
        (asFound?.cablesSeen ?? 0) < CABLES_AT_POINT,
    )
    .flatMap(({ id }): readonly Place[] => {
      const at = house.plan.positionOfPoint.get(id);
      return at === undefined ? [] : [{ tap: { point: id }, at }];
    });
}

const awayMm = (a: Position, b: Position): number =>
  Math.abs(a.at[0] - b.at[0]) + Math.abs(a.at[1] - b.at[1]) + (a.storeyId === b.storeyId ? 0 : STOREY_MM);

/** New cable of a connection; null where a length is not known. */
function newCableMm({ runs }: Worked, connectionId: string): number | null {
  return runs
    .filter((run) => run.connectionId === connectionId)
    .reduce<number | null>(
      (sum, { lengthMm }) => (sum === null || lengthMm === null ? null : sum + lengthMm),
      0,
    );
}

/** A scheme in which one cable starts elsewhere; what was pinned of its way from there is let go. */
function tappedAt(
  scheme: Scheme,
  {
    connectionId,
    pointId,
    other,
  }: { readonly connectionId: string; readonly pointId: string; readonly other: Tap },
): Scheme {
  const isFromThere = (end: End): boolean => 'point' in end && end.point === pointId;
  return {
    ...scheme,
    connections: scheme.connections.map((one): Connection => {
      if (one.id !== connectionId || (one.kind !== 'spur' && one.kind !== 'fused-spur')) return one;
      const { runs, ...rest } = one;
      const kept = (runs ?? []).filter(({ from, to }) => !isFromThere(from) && !isFromThere(to));
      return { ...rest, from: other, ...(kept.length === 0 ? {} : { runs: kept }) };
    }),
  };
}

function tapWords(job: Job, tap: Tap): string {
  if ('point' in tap) return labelOfPoint(job, tap.point);
  if ('origin' in tap) return 'the board';
  const leg = job.legs.find(({ id }) => id === tap.leg);
  const end = (one: End | undefined): string =>
    one !== undefined && 'point' in one ? labelOfPoint(job, one.point) : 'board';
  return `a joint in the leg ${end(leg?.from)}–${end(leg?.to)}`;
}
