import type { Worked } from '../connections/worked.ts';
import type { Run } from '../ways/run.ts';
import type { Filling } from '../ways/way-tariff.ts';
import { boxWork } from './box-lines.ts';
import type { Demand } from './demand.ts';
import type { KitCounts } from './kit-counts.ts';
import { ownHoles } from './own-holes.ts';
import { metreOfChase, plasterFor, roundBox } from './plaster.ts';
import { sealantDemands } from './sealant-lines.ts';
import { type Stretch, stretchesOf } from './wall-stretches.ts';

/** Plaster for chases and boxes let into masonry, and the small things that go with making good. */
export function makingGoodDemands(worked: Worked, counts: KitCounts): readonly Demand[] {
  const chases = stretchesOf(worked.runs, worked.plan, (segment) => segment.medium === 'wall-chase');
  const plaster = [
    ...chases.flatMap((stretch) => chaseDemands(stretch, worked.tariff.filling, counts)),
    ...surroundDemands(worked, counts),
  ];
  return [
    ...plaster,
    ...smallDemands(worked, plaster, counts),
    ...patchDemands(worked),
    ...sealantDemands(worked, counts),
  ];
}

function chaseDemands(stretch: Stretch, filling: Filling, counts: KitCounts): readonly Demand[] {
  const metres = stretch.lengthMm / 1e3;
  return plasterFor(metreOfChase(stretch, counts), filling, counts).map(([item, kgPerM]) => {
    const kg = metres * kgPerM;
    return plasterDemand(
      item,
      { measured: kg, low: kg * stretch.lowRatio, high: kg * stretch.highRatio },
      stretch.runIds,
    );
  });
}

function plasterDemand(
  item: string,
  kg: Pick<Demand, 'measured' | 'low' | 'high'>,
  causes: readonly string[],
): Demand {
  return { item, unit: 'kg', group: 'making-good', ...kg, causes };
}

function surroundDemands(worked: Worked, counts: KitCounts): readonly Demand[] {
  return boxWork(worked)
    .filter(({ box }) => box.build === 'steel')
    .flatMap(({ box, measured, high, depthMm }) =>
      plasterFor(roundBox(box.gangs, depthMm, counts), worked.tariff.filling, counts).map(([item, kg]) =>
        plasterDemand(item, { measured: kg * measured, high: kg * high }, [box.id]),
      ),
    );
}

function smallDemands(
  worked: Worked,
  plaster: readonly Demand[],
  { plasterKgAPva, boxesAFiller, boxesACaulk }: KitCounts,
): Demand[] {
  const small = (
    item: string,
    causes: readonly string[],
    [measured, high]: readonly [number, number],
  ): Demand => ({
    ...{ item, unit: 'each', group: 'making-good', measured, high, causes },
  });
  const plastered = [...new Set(plaster.flatMap((demand) => demand.causes))];
  // What is screwed onto a wall leaves nothing to make good.
  const boxes = boxWork(worked).filter(({ box }) => box.build !== 'surface');
  const boxIds = boxes.map(({ box }) => box.id);
  const sureBoxes = boxes.filter(({ measured }) => measured > 0).length;
  const forBoxes = (each: number) => [packs(sureBoxes, each), packs(boxes.length, each)] as const;
  const kg = (end: 'measured' | 'high') =>
    plaster.reduce((sum, demand) => sum + (demand[end] ?? demand.measured), 0);
  return [
    ...(plastered.length > 0
      ? [small('pva', plastered, [packs(kg('measured'), plasterKgAPva), packs(kg('high'), plasterKgAPva)])]
      : []),
    ...(boxIds.length > 0
      ? [small('filler', boxIds, forBoxes(boxesAFiller)), small('caulk', boxIds, forBoxes(boxesACaulk))]
      : []),
  ];
}

const packs = (amount: number, each: number): number => Math.ceil(amount / each - 1e-9);

/** Drops of a cable in stud walls that nobody has pinned: each may meet a noggin that nobody knows of. */
export const unseenDrops = ({ segments }: Run): number =>
  segments.filter(
    ({ medium, direction, certainty }) =>
      medium === 'stud-cavity' && direction === 'vertical' && certainty !== 'pinned',
  ).length;

/**
 * Boards of stud walls: a patch over every stud that is drilled behind them, once a bundle; and a drop may meet a noggin
 * that nobody knows of: a patch then, at worst.
 */
function patchDemands({ runs }: Worked): Demand[] {
  const drilled = ownHoles(runs);
  return runs.flatMap((run) => {
    const drops = unseenDrops(run);
    const studs = drilled
      .filter(({ runId }) => runId === run.id)
      .reduce((sum, { segment }) => sum + segment.studsCrossed, 0);
    return drops + studs === 0
      ? []
      : [
          {
            item: 'plasterboard-patch',
            unit: 'set',
            group: 'making-good',
            measured: studs,
            high: studs + drops,
            causes: [run.id],
          },
        ];
  });
}
