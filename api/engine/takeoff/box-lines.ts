import { fittedDepthMm, STOCK_DEPTHS_MM } from '../connections/box-depth.ts';
import type { BackBox } from '../connections/things.ts';
import type { Worked } from '../connections/worked.ts';
import type { Demand } from './demand.ts';

/** How often a box is fitted: once, or perhaps, where it is not known whether the found one serves. */
export interface BoxWork {
  readonly box: BackBox;
  readonly measured: number;
  readonly high: number;
  readonly depthMm: number;
}

/**
 * The boxes that are fitted or exchanged, and those that may have to be: found, of unknown depth, and asked
 * to hold more than a 25 mm box does.
 */
export function boxWork({ things }: Worked): readonly BoxWork[] {
  return things.boxes.flatMap((box): BoxWork[] => {
    if (box.action === 'fit' || box.action === 're-box')
      return [{ box, measured: 1, high: 1, depthMm: box.depthMm }];
    return mayNotServe(box) && box.frameMm === undefined
      ? [{ box, measured: 0, high: 1, depthMm: fittedDepthMm(box.minimumDepthMm) }]
      : [];
  });
}

/** Whether a box of unknown depth is asked to hold more than the shallowest that is usual. */
export const mayNotServe = ({ action, minimumDepthMm }: BackBox): boolean =>
  action === 'unknown' && minimumDepthMm > STOCK_DEPTHS_MM[0];

/**
 * Back boxes, grommets for cables that come in without a tube, and putty pads in party walls. A weatherproof accessory is its own box:
 * it takes a gland for each such cable.
 */
export function boxDemands(worked: Worked): readonly Demand[] {
  const ownBoxes = weatherproofIds(worked);
  return boxWork(worked).flatMap(({ box, measured, high, depthMm }) => {
    const part = (item: string, count: number): Demand => ({
      item,
      unit: 'each',
      group: 'boxes',
      measured: measured * count,
      high: high * count,
      causes: [box.id],
    });
    if (ownBoxes.has(box.id)) return box.knockOuts > 0 ? [part('entry-gland-20', box.knockOuts)] : [];
    const size = sizeOfGangs(box.gangs);
    const parts = [part(`box-${box.build}-${size}-${stockDepthMm(depthMm)}`, 1)];
    if (box.build === 'steel' && box.knockOuts > 0) parts.push(part('grommet-20', box.knockOuts));
    if (box.party && box.build !== 'surface')
      parts.push(part(box.gangs === 1 ? 'putty-pad-single' : 'putty-pad-twin', Math.ceil(box.gangs / 2)));
    return parts;
  });
}

/** Accessories that are fitted and weatherproof: they come in an enclosure. */
export const weatherproofIds = ({ things }: Worked): ReadonlySet<string> =>
  new Set(things.accessories.filter(({ features }) => features.includes('ip66')).map(({ id }) => id));

/** How items name a box, a plate or a frame of so many gangs. */
export function sizeOfGangs(gangs: number): string {
  if (gangs === 1) return 'single';
  return gangs === 2 ? 'twin' : `${gangs}-gang`;
}

function stockDepthMm(depthMm: number): number {
  return STOCK_DEPTHS_MM.find((stockMm) => stockMm >= depthMm) ?? depthMm;
}
