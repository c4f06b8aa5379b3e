import type { BackBox } from '../connections/things.ts';
import type { Worked } from '../connections/worked.ts';
import { mayNotServe, sizeOfGangs } from './box-lines.ts';
import type { Demand } from './demand.ts';
import type { KitCounts } from './kit-counts.ts';
import { plateScrewItem, screwForFrameMm } from './plate-screws.ts';

/** Spacer frames over boxes that stay, and the longer screws that their plates then take; perhaps, where a depth is not known. */
export function frameDemands(worked: Worked, counts: KitCounts): readonly Demand[] {
  return worked.things.boxes.flatMap((box) => {
    const { frameMm } = box;
    if (frameMm === undefined || !(box.action === 'frame' || mayNotServe(box))) return [];
    const screw = plateScrewItem(worked, box.id, screwForFrameMm(frameMm, counts));
    return [
      part(box, { item: `frame-${sizeOfGangs(box.gangs)}-${frameMm}`, group: 'boxes' }),
      { ...part(box, { item: screw, group: 'fixings' }, 2) },
    ];
  });
}

function part({ id, action }: BackBox, { item, group }: Pick<Demand, 'item' | 'group'>, count = 1): Demand {
  return {
    item,
    unit: 'each',
    group,
    measured: action === 'frame' ? count : 0,
    high: count,
    causes: [id],
  };
}
