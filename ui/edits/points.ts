import type { Point, PointKind } from '#model/installation.ts';
import type { Certainty } from '#model/primitives.ts';
import type { JobEdit } from '../job-events.ts';
import { type FactOf, type FactValue, putCertainty, putFact } from './facts.ts';
import { markable } from './marked.ts';

/** The facts of a point that are set one by one; its kind and status are changed by edits of their own. */
export type PointFact = Exclude<FactOf<Point>, 'kind' | 'status' | 'replaces' | 'asFound' | 'photos'>;
type Found = NonNullable<Point['asFound']>;
/** What was found at a point's plate. */
export type FoundFact = keyof Found;
type Named = Pick<Point, 'id' | 'label'>;

/** What a new point begins with. */
export type NewPoint = Pick<Point, 'id' | 'label' | 'status' | 'kind'> &
  Partial<Pick<Point, 'place' | 'circuit'>>;

/** Marks how sure it is what stands at points that were entered, and what circuit they are of. */
const markPoints = (ids: readonly string[], certainty: Certainty): JobEdit => ({
  label: 'Change how sure points are',
  change: ({ points }) => {
    for (const point of points) {
      if (!ids.includes(point.id)) continue;
      putCertainty(point, 'kind', certainty);
      if (point.circuit !== undefined) putCertainty(point, 'circuit', certainty);
    }
  },
});

/** Adds points that were found, each by what is known of it already, to be marked as the person knows them. */
export const addFoundPoints = (points: readonly NewPoint[]): JobEdit =>
  markable(addPoints(points), (certainty) =>
    markPoints(
      points.map(({ id }) => id),
      certainty,
    ),
  );

/** Adds points, each by what is known of it already. */
export const addPoints = (points: readonly NewPoint[]): JobEdit => ({
  label: points.length === 1 ? `Add ${points[0]?.label}` : `Add ${points.length} points`,
  change: (job) => {
    for (const point of points) job.points.push({ features: [], photos: [], ...structuredClone(point) });
  },
});

/** Sets a fact of a point; null takes it away where it need not be there. */
export const setPointFact = <K extends PointFact>(
  { id, label }: Named,
  fact: K,
  value: FactValue<Point, K>,
): JobEdit => ({
  label: `Change ${label}`,
  change: ({ points }) => {
    const point = points.find((each) => each.id === id);
    if (point !== undefined) putFact<Point, K>(point, fact, value);
  },
});

/** Sets what was found at a point's plate; null takes it away. */
export const setFoundFact = <K extends FoundFact>(
  { id, label }: Named,
  fact: K,
  value: FactValue<Found, K>,
): JobEdit => ({
  label: `Change what was found at ${label}`,
  change: ({ points }) => {
    const point = points.find((each) => each.id === id);
    if (point === undefined) return;
    const found: Found = { ...point.asFound };
    putFact<Found, K>(found, fact, value);
    if (value === null) putCertainty(point, fact, null);
    if (Object.keys(found).length > 0) point.asFound = found;
    else delete point.asFound;
  },
});

/** Says how sure a fact of a point is, or of what was found there. */
export const setPointCertainty = (
  { id, label }: Named,
  fact: PointFact | FoundFact | 'kind',
  certainty: Certainty,
): JobEdit => ({
  label: `Change how sure a fact of ${label} is`,
  change: ({ points }) => {
    const point = points.find((each) => each.id === id);
    if (point === undefined) return;
    const isAsked = fact in (point.asFound ?? {}) && point.certainty?.asFound !== undefined;
    // Said of the whole plate before, so that seen has to be said of this fact.
    if (isAsked && certainty === 'seen') point.certainty = { ...point.certainty, [fact]: 'seen' };
    else putCertainty(point, fact, certainty);
  },
});

/** Changes what stands at a point; what belongs to the other kind alone goes. */
export const setPointKind = ({ id, label }: Named, kind: PointKind): JobEdit => ({
  label: `Change what ${label} is`,
  change: ({ points }) => {
    const point = points.find((each) => each.id === id);
    if (point === undefined) return;
    point.kind = kind;
    if (kind !== 'fused-unit') delete point.unit;
    if (kind !== 'grid') delete point.modules;
    if (kind !== 'joint') delete point.joint;
  },
});

/** Adds a wanted point like another beside it: another id and label, and no place yet. */
export const copyPoint = (point: Point, id: string, label: string): JobEdit => ({
  label: `Copy ${point.label} as ${label}`,
  change: ({ points }) => {
    const { place: _place, replaces: _replaces, certainty: _certainty, asFound: _asFound, ...same } = point;
    const after = points.findIndex((each) => each.id === point.id);
    const copy = { ...structuredClone(same), id, label, photos: [] };
    points.splice(after < 0 ? points.length : after + 1, 0, copy);
  },
});
