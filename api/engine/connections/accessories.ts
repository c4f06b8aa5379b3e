import type { Fitting } from './fittings.ts';
import type { FusedUnit, NewAccessory } from './things.ts';
import type { WiringIndex } from './wiring-index.ts';

/**
 * What the scheme fits, sorted by id: wanted points that a cable reaches, points changed by a remedy, units
 * that a connection brings along, and a blank plate (`<pointId>/joined`) over the joint that is left where a
 * point is taken out. Features are the point's own, and of fused units `switched`, `neon`, `flex`, `rcd`.
 */
export function newAccessories(
  index: WiringIndex,
  fittings: readonly Fitting[],
  units: readonly FusedUnit[],
): readonly NewAccessory[] {
  const unitOf = new Map(units.map((unit) => [unit.id, unit]));
  const fitted = fittings
    .filter((fitting) => fitting.isNew)
    .map((fitting) => newAccessory(fitting, unitOf.get(fitting.id)));
  return [...fitted, ...blankPlates(index)].toSorted((a, b) => (a.id < b.id ? -1 : 1));
}

function newAccessory(fitting: Fitting, unit: FusedUnit | undefined): NewAccessory {
  const features = new Set(fitting.features);
  if (fitting.kind === 'fused-unit') {
    if (unit?.switched ?? fitting.point?.unit?.switched ?? true) features.add('switched');
    if (fitting.point?.unit?.neon) features.add('neon');
    if (fitting.flexOutlet) features.add('flex');
  }
  return {
    pointId: fitting.point?.id ?? null,
    id: fitting.id,
    kind: fitting.kind,
    features: [...features].toSorted(),
  };
}

function blankPlates(index: WiringIndex): NewAccessory[] {
  return index.input.proposed.nodes
    .filter((node) => node.kind === 'joint' && node.state === 'new' && node.id.endsWith('/joined'))
    .map((node) => {
      const pointId = node.pointId ?? node.id.slice(0, -'/joined'.length);
      const isTwin = index.pointById.get(pointId)?.kind === 'socket-twin';
      return { pointId, id: node.id, kind: 'blank', features: isTwin ? ['twin'] : [] };
    });
}
