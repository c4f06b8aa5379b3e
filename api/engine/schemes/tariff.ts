import type { Wall } from '#model/building.ts';
import type { Library } from '#model/library.ts';
import { USUAL_CABLE } from '../circuit/usual-cable.ts';
import { chaseTask } from '../labour/chase-work.ts';
import type { TaskId } from '../labour/known-tasks.ts';
import { unitMess } from '../labour/mess.ts';
import { normOf } from '../labour/norm-of.ts';
import { remembered } from '../plan/remembered.ts';
import { pricesByItem } from '../price/prices-by-item.ts';
import { cableItem } from '../takeoff/cable-lines.ts';
import { clipSpacing } from '../takeoff/clip-spacing.ts';
import { channelSize, ovalSizeMm } from '../takeoff/containment-size.ts';
import { flatCableSize } from '../takeoff/flat-cable-size.ts';
import { chaseKgPerM } from '../takeoff/making-good-lines.ts';
import { together, type WayTariff, type WorkCost } from '../ways/way-tariff.ts';

/** Channel is screwed this often beside its adhesive, and once more at its end, per metre. Common practice, no source. */
const SCREWS_PER_M = 2;

/**
 * What ways cost, from the library's norms at their typical minutes and its rate, and its list prices by what is used: the
 * costs that the ways stage weighs, which knows no prices itself. A task without a norm and an item without a price weigh
 * nothing.
 */
export const tariffOf = remembered((library: Library): WayTariff => {
  const work = (task: TaskId): WorkCost => workOf(library, task);
  const item = (name: string, quantity: number): WorkCost => ({
    millipence: quantity * unitMillipence(library, name),
    minutes: 0,
    mess: 0,
  });
  const inChase = together(work('contain-chase'), work('fill-chase'));
  const tube = item(`oval-${ovalSizeMm([USUAL_CABLE])}`, 1);
  const plaster = item('plaster-one-coat', chaseKgPerM({ cables: [USUAL_CABLE], containment: 'oval' }));
  const chase = (core: Wall['core']): WorkCost =>
    [work(chaseTask[core]), inChase, tube, plaster].reduce(together);
  return {
    thread: work('thread-cable'),
    clip: together(
      work('clip-cable'),
      item(
        `clip-flat-${USUAL_CABLE.lineMm2}`,
        1000 / clipSpacing(flatCableSize(USUAL_CABLE.lineMm2).widthMm).horizontalMm,
      ),
    ),
    channel: [
      work('fit-channel'),
      item(`channel-${channelSize([USUAL_CABLE])}`, 1),
      item('screw-and-plug', SCREWS_PER_M),
    ].reduce(together),
    trench: work('dig-trench'),
    chase: {
      brick: chase('brick'),
      'hard-brick': chase('hard-brick'),
      block: chase('block'),
      'aerated-block': chase('aerated-block'),
      concrete: chase('concrete'),
      'timber-stud': chase('timber-stud'),
      'metal-stud': chase('metal-stud'),
      open: chase('open'),
    },
    board: {
      'lift-board': work('lift-board'),
      'chipboard-trap': work('chipboard-trap'),
      'open-fixed-floor': work('open-fixed-floor'),
    },
    joist: work('drill-joist'),
    joistNotch: together(work('notch-joist'), item('joist-plate', 1)),
    stud: together(work('drill-stud'), item('plasterboard-patch', 1)),
    wallHole: work('drill-wall'),
    fish: work('fish-stud'),
    cableMillipencePerM: unitMillipence(library, cableItem(USUAL_CABLE)),
  };
});

/** One unit of a task at its typical minutes and the library's rate. */
function workOf({ norms }: Library, task: TaskId): WorkCost {
  const minutes = normOf(task, norms)?.typicalMin ?? 0;
  return { millipence: (minutes * norms.ratePencePerHour * 1000) / 60, minutes, mess: unitMess(task, norms) };
}

/** One unit of an item at its list price, thousandths of a penny; nought where the list does not hold it. */
function unitMillipence({ prices }: Library, name: string): number {
  const price = pricesByItem(prices).get(name);
  return price === undefined ? 0 : (price.pricePence * 1000) / price.perQuantity;
}
