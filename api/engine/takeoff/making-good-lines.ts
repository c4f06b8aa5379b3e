import type { Worked } from '../connections/worked.ts';
import type { Run } from '../ways/run.ts';
import type { Filling } from '../ways/way-tariff.ts';
import { boxWork } from './box-lines.ts';
import type { Demand } from './demand.ts';
import { ownHoles } from './own-holes.ts';
import { metreOfChase, plasterFor, roundBox } from './plaster.ts';
import { type Stretch, stretchesOf } from './wall-stretches.ts';

/** Plaster for chases and boxes let into masonry, and the small things that go with making good. */
export function makingGoodDemands(worked: Worked): readonly Demand[] {
  const chases = stretchesOf(worked.runs, worked.plan, (segment) => segment.medium === 'wall-chase');
  const plaster = [
    ...chases.flatMap((stretch) => chaseDemands(stretch, worked.tariff.filling)),
    ...surroundDemands(worked),
  ];
  return [...plaster, ...smallDemands(worked, plaster), ...patchDemands(worked), ...sealantDemands(worked)];
}

function chaseDemands(stretch: Stretch, filling: Filling): readonly Demand[] {
  const metres = stretch.lengthMm / 1e3;
  return plasterFor(metreOfChase(stretch), filling).map(([item, kgPerM]) => {
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

function surroundDemands(worked: Worked): readonly Demand[] {
  return boxWork(worked)
    .filter(({ box }) => box.build === 'steel')
    .flatMap(({ box, measured, high, depthMm }) =>
      plasterFor(roundBox(box.gangs, depthMm), worked.tariff.filling).map(([item, kg]) =>
        plasterDemand(item, { measured: kg * measured, high: kg * high }, [box.id]),
      ),
    );
}

function smallDemands(worked: Worked, plaster: readonly Demand[]): Demand[] {
  const small = (item: string, causes: readonly string[], isSure = true): Demand => ({
    item,
    unit: 'each',
    group: 'making-good',
    measured: isSure ? 1 : 0,
    high: 1,
    causes,
  });
  const plastered = [...new Set(plaster.flatMap((demand) => demand.causes))];
  // What is screwed onto a wall leaves nothing to make good.
  const boxes = boxWork(worked).filter(({ box }) => box.build !== 'surface');
  const boxIds = boxes.map(({ box }) => box.id);
  const demands: Demand[] = [];
  if (plastered.length > 0)
    demands.push(
      small(
        'pva',
        plastered,
        plaster.some((demand) => demand.measured > 0),
      ),
    );
  const isBoxSure = boxes.some(({ measured }) => measured > 0);
  if (boxIds.length > 0) demands.push(small('filler', boxIds, isBoxSure), small('caulk', boxIds, isBoxSure));
  return demands;
}

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

/** Where cable goes through a party wall its hole is sealed. */
function sealantDemands({ runs, plan }: Worked): Demand[] {
  const through = runs.filter((run) =>
    run.segments.some(
      ({ medium, wallId }) =>
        medium === 'through-wall' && wallId !== null && plan.wallById.get(wallId)?.wall.party === true,
    ),
  );
  if (through.length === 0) return [];
  const causes = through.map((run) => run.id).toSorted();
  return [{ item: 'fire-sealant', unit: 'each', group: 'making-good', measured: 1, causes }];
}
