import type { Point, PointKind } from '#model/installation.ts';
import { movesAway } from '../circuit/moved-away.ts';
import type { NodeId } from '../circuit/network.ts';
import { type PlateFinish, plateFinish, withFinish } from './finish.ts';
import type { FusedUnit } from './things.ts';
import type { WiringIndex } from './wiring-index.ts';

/** What stands, or will stand, in one back box: a point, or a unit that a connection brings along. */
export interface Fitting {
  /** The point's id, or the unit's node. */
  readonly id: string;
  readonly point: Point | null;
  /** The point whose box and survey it takes over; the point itself when it was there before; null for one in a box of its own. */
  readonly surveyed: Point | null;
  readonly kind: PointKind;
  readonly features: readonly string[];
  /** Of what is fitted new; null for what stays as found. */
  readonly finish: PlateFinish | null;
  readonly flexOutlet: boolean;
  readonly gangs: number;
  /** How it is let into the wall; a unit that nobody described goes in like the first point it feeds. */
  readonly mount: Point['mount'];
  /** Node ids of its terminals: supply and load sides, grid modules. */
  readonly nodeIds: readonly NodeId[];
  /** Fitted by the scheme, as opposed to left as found. */
  readonly isNew: boolean;
  /** Kinds of the remedies at this point or unit, sorted. */
  readonly remedies: readonly string[];
}

/**
 * Everything that sits in a box: points that are found and stay, wanted points that a cable reaches, and
 * units brought along. Sorted by id. A remedy changes what stands there: `single-to-twin`, `rcd-outlet`
 * and `rcd-unit`.
 */
export function fittings(index: WiringIndex, units: readonly FusedUnit[]): readonly Fitting[] {
  const unitOf = new Map(units.map((unit) => [unit.id, unit]));
  const ofPoints = index.input.job.points
    .filter((point) => point.kind !== 'joint' && standsThere(index, point))
    .map((point) => pointFitting(index, point, unitOf.get(point.id)));
  const broughtAlong = units
    .filter((unit) => unit.pointId === null && unit.state === 'new')
    .map((unit) => unitFitting(index, unit));
  return [...ofPoints, ...broughtAlong].toSorted((a, b) => (a.id < b.id ? -1 : 1));
}

function standsThere(index: WiringIndex, point: Point): boolean {
  if (point.status === 'existing') return true;
  const hasCable = (index.cablesAt.get(point.id) ?? []).length > 0;
  if (point.status === 'wanted')
    return index.input.scheme !== null && (hasCable || point.replaces !== undefined);
  // What is to go still stands in the house as found.
  return index.input.scheme === null;
}

function pointFitting(index: WiringIndex, point: Point, unit: FusedUnit | undefined): Fitting {
  const remedies = remediesAt(index, point.id);
  const changed = ['single-to-twin', 'rcd-outlet', 'rcd-unit'].some((kind) => remedies.includes(kind));
  const kind = kindAfter(point.kind, remedies);
  const hasRcd = remedies.includes('rcd-outlet') || remedies.includes('rcd-unit') || point.unit?.rcd === true;
  const surveyed = surveyedPoint(index, point);
  const isNew = point.status === 'wanted' || changed;
  const finish = isNew ? plateFinish(point, index.input.job.terms, index.input.firmTerms) : null;
  const worn = finish === null ? point.features : withFinish(point.features, finish);
  return {
    id: point.id,
    point,
    surveyed,
    kind,
    features: [...new Set<string>([...worn, ...(hasRcd ? ['rcd'] : [])])].toSorted(),
    finish,
    flexOutlet: unit?.flexOutlet ?? point.unit?.flexOutlet ?? kind === 'flex-outlet',
    gangs: point.box?.gangs ?? gangsOf(kind, point.modules?.length ?? 0),
    // A weatherproof unit is its own box, on the wall unless somebody said otherwise.
    mount:
      point.mount ?? surveyed?.mount ?? (isNew && point.features.includes('ip66') ? 'surface' : undefined),
    nodeIds: nodesOfPoint(index, point.id),
    isNew,
    remedies,
  };
}

function remediesAt(index: WiringIndex, id: string): readonly string[] {
  return (index.input.scheme?.remedies ?? [])
    .filter((remedy) => remedy.at === id)
    .map((remedy): string => remedy.kind)
    .toSorted();
}

function surveyedPoint(index: WiringIndex, point: Point): Point | null {
  if (point.status !== 'wanted') return point;
  const old = point.replaces === undefined ? undefined : index.pointById.get(point.replaces);
  return old === undefined || movesAway(old, point) ? null : old;
}

function kindAfter(kind: PointKind, remedies: readonly string[]): PointKind {
  if (remedies.includes('single-to-twin') && kind === 'socket-single') return 'socket-twin';
  if (remedies.includes('rcd-unit')) return 'fused-unit';
  return kind;
}

/** Gangs of the box that an accessory's plate covers; two grid modules a gang. */
export function gangsOf(kind: PointKind, modules: number): number {
  if (kind === 'socket-twin' || kind === 'cooker-control') return 2;
  if (kind === 'shaver') return 2;
  return kind === 'grid' ? Math.max(1, Math.ceil(modules / 2)) : 1;
}

function nodesOfPoint(index: WiringIndex, pointId: string): NodeId[] {
  return [...index.nodeById.values()]
    .filter((node) => node.pointId === pointId && node.kind !== 'joint')
    .map((node) => node.id)
    .toSorted();
}

function unitFitting(index: WiringIndex, unit: FusedUnit): Fitting {
  const remedies = remediesAt(index, unit.id);
  const finish = plateFinish(null, index.input.job.terms, index.input.firmTerms);
  return {
    id: unit.id,
    point: null,
    surveyed: null,
    kind: 'fused-unit',
    features: withFinish(remedies.includes('rcd-unit') ? ['rcd'] : [], finish).toSorted(),
    finish,
    flexOutlet: unit.flexOutlet,
    gangs: 1,
    mount: unit.accessories.flatMap((id) => index.pointById.get(id)?.mount ?? [])[0],
    nodeIds: [unit.id, unit.loadNode],
    isNew: true,
    remedies,
  };
}
