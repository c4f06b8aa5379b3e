import type { Library } from '#model/library.ts';
import type { Worked } from '../../connections/worked.ts';
import { accessoryWork } from '../../labour/accessory-work.ts';
import type { Amount } from '../../labour/amount.ts';
import { boardWork } from '../../labour/board-work.ts';
import { boxWork } from '../../labour/box-work.ts';
import { circuitWork } from '../../labour/circuit-work.ts';
import { jointWork } from '../../labour/joint-work.ts';
import type { TaskId } from '../../labour/known-tasks.ts';
import { unitMess } from '../../labour/mess.ts';
import { taskMinutes } from '../../labour/task-minutes.ts';
import { hourPence } from '../../price/overhead.ts';
import { pricesByItem } from '../../price/prices-by-item.ts';
import { accessoryDemands } from '../../takeoff/accessory-lines.ts';
import { boxDemands } from '../../takeoff/box-lines.ts';
import { type Demand, wastePercentOf } from '../../takeoff/demand.ts';
import { earthDemands } from '../../takeoff/earth-lines.ts';
import { fixingDemands } from '../../takeoff/fixing-lines.ts';
import { frameDemands } from '../../takeoff/frame-lines.ts';
import { jointDemands } from '../../takeoff/joint-lines.ts';
import { type KitCounts, kitCountsOf } from '../../takeoff/kit-counts.ts';
import { makingGoodDemands } from '../../takeoff/making-good-lines.ts';
import { paperDemands } from '../../takeoff/paper-lines.ts';
import { protectionDemands } from '../../takeoff/protection-lines.ts';
import { type Works, wholeMess, worksTogether } from './works.ts';

/** What so much of a task costs at the typical minutes and what an hour comes to, thousandths of a penny; without a norm nothing. */
export function taskMillipence(task: TaskId, quantity: number, { norms }: Library): number {
  const minutes = taskMinutes(task, quantity, norms).typicalMin ?? 0;
  return Math.round((minutes * hourPence(norms) * 1000) / 60);
}

/** What so much of a task comes to: money, and the disturbance that its norm tells. */
export const taskWorks = (task: TaskId, quantity: number, library: Library): Works => ({
  millipence: taskMillipence(task, quantity, library),
  mess: wholeMess(quantity * unitMess(task, library.norms)),
});

/** What a demand costs at list price, waste on top and packs left out, thousandths of a penny; without a price nothing. */
export function demandMillipence(demand: Demand, { norms, prices }: Library): number {
  const price = pricesByItem(prices).get(demand.item);
  if (price === undefined || price.unit !== demand.unit) return 0;
  const quantity = demand.measured * (1 + wastePercentOf(demand, norms.waste) / 100);
  return Math.round((quantity * price.pricePence * 1000) / price.perQuantity);
}

/**
 * Left out of the works cost: what every job takes once, whatever its schemes do; and grommets, pence each, which only
 * cables without a tube take: no column and no walk knows the tube.
 */
const leftOut: ReadonlySet<string> = new Set([
  'pva',
  'filler',
  'caulk',
  'fire-sealant',
  'weather-sealant',
  'grommet-20',
]);

/**
 * What the things of a worked scheme come to, by the one thing, circuit, connection or remedy that causes it: the work
 * of accessories, boxes, joints, board and circuits, and what they are made of, by the same tasks and items as labour
 * and take-off count. Left out: the runs themselves, what several causes share or every job takes once, grommets, and travel, which
 * goes by the days that all of it fills.
 */
export function thingsByCause(worked: Worked, library: Library): ReadonlyMap<string, Works> {
  const runIds = new Set(worked.runs.map(({ id }) => id));
  const byCause = new Map<string, Works>();
  const add = (causes: readonly string[], works: Works): void => {
    const [cause] = causes;
    if (cause === undefined || causes.length > 1 || runIds.has(cause)) return;
    const so = byCause.get(cause);
    byCause.set(cause, so === undefined ? works : worksTogether([so, works]));
  };
  for (const { task, quantity, causes } of workOf(worked)) add(causes, taskWorks(task, quantity, library));
  for (const demand of demandsOf(worked, kitCountsOf(library)))
    if (!leftOut.has(demand.item))
      add(demand.causes, { millipence: demandMillipence(demand, library), mess: 0 });
  return byCause;
}

function workOf(worked: Worked): readonly Amount[] {
  return [
    ...accessoryWork(worked),
    ...boxWork(worked),
    ...jointWork(worked),
    ...boardWork(worked),
    ...circuitWork(worked),
  ];
}

function demandsOf(worked: Worked, counts: KitCounts): readonly Demand[] {
  return [
    ...accessoryDemands(worked),
    ...boxDemands(worked),
    ...frameDemands(worked, counts),
    ...jointDemands(worked, counts),
    ...earthDemands(worked, counts),
    ...fixingDemands(worked, counts),
    ...makingGoodDemands(worked, counts),
    ...protectionDemands(worked, counts),
    ...paperDemands(worked, counts).filter(({ item }) => item.startsWith('certificate-')),
  ];
}
