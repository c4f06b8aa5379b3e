import { jointInOldBox, leavesBox } from '../circuit/moved-away.ts';
import { type PlateFinish, plateFinish, withFinish } from './finish.ts';
import { type Fitting, gangsOf } from './fittings.ts';
import type { FusedUnit, NewAccessory } from './things.ts';
import type { WiringIndex } from './wiring-index.ts';

/**
 * What the scheme fits, sorted by id: wanted points that a cable reaches, points changed by a remedy, units
 * that a connection brings along, and a blank plate (`<pointId>/joined`) over every box that loses its
 * accessory. Features are the point's own, and of fused units `switched`, `neon`, `flex`, `rcd`.
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
    ...lookOf(fitting.finish),
  };
}

/** The look of a metal plate, where somebody chose it. */
const lookOf = (finish: PlateFinish | null): Pick<NewAccessory, 'finish'> =>
  finish === null || finish === 'white' || finish === 'metal' ? {} : { finish };

/** Over every box that loses its accessory: what is joined in it stays there, and an empty one is closed. */
function blankPlates(index: WiringIndex): NewAccessory[] {
  if (index.input.scheme === null) return [];
  return index.input.job.points
    .filter((point) => leavesBox(point, index.input.job.points))
    .map((point) => {
      const { finish, features } = point;
      // What the old plate was of says nothing of the one that closes its box.
      const own = features.includes('ip66') ? [] : features.filter((feature) => feature !== 'metal');
      const plate = { ...(finish && { finish }), features: own };
      const chosen = plateFinish(plate, index.input.job.terms, index.input.firmTerms);
      const twin = gangsOf(point.kind, point.modules?.length ?? 0) > 1 ? ['twin'] : [];
      return {
        pointId: point.id,
        id: jointInOldBox(point.id),
        kind: 'blank',
        features: withFinish(twin, chosen).toSorted(),
        ...lookOf(chosen),
      };
    });
}
