import type { Wall } from '#model/building.ts';
import type { Cable } from '#model/cable.ts';
import type { Job, Terms } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import { USUAL_CABLE } from '../circuit/usual-cable.ts';
import { boardTask, chaseTask } from '../labour/chase-work.ts';
import { fillingTasks } from '../labour/filling-tasks.ts';
import type { TaskId } from '../labour/known-tasks.ts';
import { unitMess } from '../labour/mess.ts';
import { normOf } from '../labour/norm-of.ts';
import { remembered } from '../plan/remembered.ts';
import { hourPence } from '../price/overhead.ts';
import { pricesByItem } from '../price/prices-by-item.ts';
import { cableItem } from '../takeoff/cable-lines.ts';
import { clipSpacing } from '../takeoff/clip-spacing.ts';
import { cappingSizeMm, channelSize, ovalSizeMm } from '../takeoff/containment-size.ts';
import { type KitCounts, kitCountsOf } from '../takeoff/kit-counts.ts';
import { metreOfChase, plasterFor } from '../takeoff/plaster.ts';
import { flatCableSize } from '../ways/flat-cable-size.ts';
import {
  type Chased,
  type Filling,
  noWork,
  times,
  together,
  type WayTariff,
  type WorkCost,
} from '../ways/way-tariff.ts';

/** What is done in walls that are cut. */
export interface WallWork {
  readonly chased: Chased;
  readonly filling: Filling;
}

/** Where neither job nor firm says: oval tube, the stricter for capacity, and one coat. Common practice, no source. */
const usualWallWork: WallWork = { chased: 'oval', filling: 'one-coat' };

/** What is done in the walls of a job: as it says, else as the firm does. */
export const wallWorkOf = (job: Terms, firm: Terms): WallWork => ({
  chased: job.chased ?? firm.chased ?? usualWallWork.chased,
  filling: job.filling ?? firm.filling ?? usualWallWork.filling,
});

/** What ways of a job cost, from the library and the job's own terms. */
export const tariffFor = ({ terms }: Pick<Job, 'terms'>, library: Library): WayTariff =>
  tariffOf(library, wallWorkOf(terms, library.terms));

/**
 * What ways cost, from the library's norms at their typical minutes and its rate, and its list prices by what is used: the
 * costs that the ways stage weighs, which knows no prices itself. A task without a norm and an item without a price weigh
 * nothing.
 */
export function tariffOf(library: Library, work: WallWork = usualWallWork): WayTariff {
  const known = tariffsOf(library);
  const key = `${work.chased} ${work.filling}`;
  const tariff = known.get(key) ?? tariffIn(library, work);
  known.set(key, tariff);
  return tariff;
}

/** The same object for the same library and work: what ways hang on is told by it. */
const tariffsOf = remembered((_: Library) => new Map<string, WayTariff>());

function tariffIn(library: Library, { chased, filling }: WallWork): WayTariff {
  const work = (task: TaskId): WorkCost => workOf(library, task);
  const counts = kitCountsOf(library);
  const item = (name: string, quantity: number): WorkCost => itemOf(library, name, quantity);
  return {
    chased,
    filling,
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
      item('screw-and-plug', 1000 / counts.channelScrewMm),
    ].reduce(together),
    channelTurn: {
      flat: item(`channel-bend-${channelSize([USUAL_CABLE])}`, 1),
      internal: item(`channel-internal-bend-${channelSize([USUAL_CABLE])}`, 1),
      external: item(`channel-external-bend-${channelSize([USUAL_CABLE])}`, 1),
    },
    trench: work('dig-trench'),
    ...chasingOf(library, { chased, filling }),
    ...(library.limits.ambientC === undefined ? {} : { ambientC: library.limits.ambientC }),
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
}

/** Chases by what the wall is made of, with one cable in them and with several. */
function chasingOf(
  library: Library,
  { chased, filling }: WallWork,
): Pick<WayTariff, 'chase' | 'chaseBoard' | 'severalInChase'> {
  const counts = kitCountsOf(library);
  const materialsOf = (cables: readonly Cable[]): readonly WorkCost[] =>
    [
      ...coversOf(chased, cables, counts),
      ...plasterFor(metreOfChase({ cables, containment: chased }, counts), filling, counts),
    ].map(([name, quantity]) => itemOf(library, name, quantity));
  const fill = workOf(library, fillingTasks[filling].chase);
  const inChase = chased === 'none' ? fill : together(workOf(library, 'contain-chase'), fill);
  const materials = materialsOf([USUAL_CABLE]);
  const cutBy = (task: TaskId): WorkCost => [workOf(library, task), inChase, ...materials].reduce(together);
  const chase = (core: Wall['core']): WorkCost => cutBy(chaseTask[core]);
  const moreWith = (...cables: readonly Cable[]): WorkCost =>
    [...materialsOf(cables), ...materials.map((each) => times(each, -1))].reduce(together, noWork);
  return {
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
    chaseBoard: cutBy(boardTask),
    severalInChase: {
      deeperMm: counts.severalDeeperMm,
      more: [moreWith(USUAL_CABLE, USUAL_CABLE), moreWith(USUAL_CABLE, USUAL_CABLE, USUAL_CABLE)],
    },
  };
}

/** What lies over a metre of these cables in a chase, or holds them there: items and how many of them. */
function coversOf(
  chased: Chased,
  cables: readonly Cable[],
  counts: KitCounts,
): readonly (readonly [item: string, quantity: number])[] {
  const { verticalMm } = clipSpacing(flatCableSize(USUAL_CABLE.lineMm2).widthMm);
  switch (chased) {
    case 'oval':
      return [[`oval-${ovalSizeMm(cables, counts)}`, 1]];
    case 'capping':
      return [
        [`capping-${cappingSizeMm(cables, counts)}`, 1],
        ['capping-pin', 1000 / counts.cappingPinMm],
      ];
    case 'none':
      return [[`clip-flat-${USUAL_CABLE.lineMm2}`, (cables.length * 1000) / verticalMm]];
  }
}

/** One unit of a task at its typical minutes and the library's rate. */
function workOf({ norms }: Library, task: TaskId): WorkCost {
  const minutes = normOf(task, norms)?.typicalMin ?? 0;
  return { millipence: (minutes * hourPence(norms) * 1000) / 60, minutes, mess: unitMess(task, norms) };
}

/** So much of an item, at its list price. */
const itemOf = (library: Library, name: string, quantity: number): WorkCost => ({
  millipence: quantity * unitMillipence(library, name),
  minutes: 0,
  mess: 0,
});

/** One unit of an item at its list price, thousandths of a penny; nought where the list does not hold it. */
function unitMillipence({ prices }: Library, name: string): number {
  const price = pricesByItem(prices).get(name);
  return price === undefined ? 0 : (price.pricePence * 1000) / price.perQuantity;
}
