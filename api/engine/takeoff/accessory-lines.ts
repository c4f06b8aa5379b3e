import type { NewAccessory } from '../connections/things.ts';
import type { Worked } from '../connections/worked.ts';
import type { Demand } from './demand.ts';

/** Every accessory that is fitted, and the fuses of fused units. */
export function accessoryDemands(worked: Worked): readonly Demand[] {
  const accessories = worked.things.accessories.flatMap((accessory) =>
    accessory.kind === 'grid'
      ? gridDemands(worked, accessory)
      : [piece(accessoryItem(accessory), accessory.id)],
  );
  return [...accessories, ...fuseDemands(worked)];
}

function piece(item: string, cause: string, measured = 1): Demand {
  return { item, unit: 'each', group: 'accessories', measured, causes: [cause] };
}

/** The item id of an accessory; features that it is sold with come after the kind. */
export function accessoryItem({ kind, features, finish }: NewAccessory): string {
  const has = (feature: string) => features.includes(feature);
  // A look that was chosen stands in the place of the metal that it is a look of.
  const suffix = (...names: readonly string[]) =>
    names
      .filter(has)
      .map((name) => `-${name === 'metal' ? (finish ?? name) : name}`)
      .join('');
  switch (kind) {
    case 'socket-single':
    case 'socket-twin':
      return kind + suffix('ip66', 'metal', 'usb', 'rcd');
    case 'fused-unit':
      return fusedUnitItem(has, suffix);
    case 'flex-outlet':
      return `flex-outlet-plate${suffix('metal')}`;
    case 'dp-switch':
      return `dp-switch-20${suffix('metal')}`;
    case 'shaver':
      return `shaver-outlet${suffix('metal')}`;
    case 'blank':
      return `blank-plate-${has('twin') ? 'twin' : 'single'}${suffix('metal')}`;
    case 'cooker-control':
      return `cooker-control${suffix('metal')}`;
    default:
      return `accessory-${kind}`;
  }
}

function fusedUnitItem(
  has: (feature: string) => boolean,
  suffix: (...names: readonly string[]) => string,
): string {
  // One with an RCD is switched by it.
  if (has('rcd')) return `fused-unit-rcd${suffix('flex', 'ip66', 'metal')}`;
  const start = has('switched') ? 'fused-unit-switched' : 'fused-unit-unswitched';
  return start + suffix('neon', 'flex', 'ip66', 'metal');
}

function gridDemands({ job }: Worked, { id, pointId, features, finish }: NewAccessory): Demand[] {
  const modules = job.points.find((point) => point.id === pointId)?.modules ?? [];
  const gangs = Math.max(1, Math.ceil(modules.length / 2));
  const size = gangs === 1 ? 'single' : gangs === 2 ? 'twin' : `${gangs}-gang`;
  const plate = `grid-plate-${size}${features.includes('metal') ? `-${finish ?? 'metal'}` : ''}`;
  const fuses = modules.filter((module) => module.fuseA !== undefined).length;
  const counted: [string, number][] = [
    ['grid-module-fuse', fuses],
    ['grid-module-switch', modules.length - fuses],
  ];
  return [
    piece(plate, id),
    ...counted.filter(([, count]) => count > 0).map(([item, count]) => piece(item, id, count)),
  ];
}

/**
 * Fuses other than the 13 A one that a unit is sold with, and one of each such rating to spare.
 * Source: common practice.
 */
function fuseDemands({ things }: Worked): Demand[] {
  const byRating = new Map<number, string[]>();
  for (const { state, fuseA, id } of things.fusedUnits) {
    if (state === 'new' && fuseA !== null && fuseA !== 13)
      byRating.set(fuseA, [...(byRating.get(fuseA) ?? []), id]);
  }
  return [...byRating].map(
    ([ratingA, ids]): Demand => ({
      item: `fuse-bs1362-${ratingA}`,
      unit: 'each',
      group: 'accessories',
      measured: ids.length + 1,
      low: ids.length,
      causes: ids,
    }),
  );
}
