import type { BackBox } from '../connections/things.ts';
import type { Worked } from '../connections/worked.ts';
import { boxWork } from './box-lines.ts';
import type { Demand } from './demand.ts';
import { flatCableSectionMm2, flatCableSize } from './flat-cable-size.ts';
import { ownHoles } from './own-holes.ts';
import { type Stretch, stretchesOf } from './wall-stretches.ts';

/**
 * Plaster for a litre of hole, kg: 10 kg cover 1.5 m² at 8 mm, which is 12 litres.
 * Source: lets-do-diy.com, "Plastering materials" (bonding coat).
 */
export const PLASTER_KG_PER_LITRE = 10 / (1.5 * 8);

/** The hole round a box is this much larger on every side, mm. Common practice, no source. */
const HOLE_CLEARANCE_MM = 10;

/** Plaster for chases and boxes let into masonry, and the small things that go with making good. */
export function makingGoodDemands(worked: Worked): readonly Demand[] {
  const chases = stretchesOf(worked.runs, worked.plan, (segment) => segment.medium === 'wall-chase');
  const plaster = [...chases.map(chaseDemand), ...surroundDemands(worked)];
  return [...plaster, ...smallDemands(worked, plaster), ...patchDemands(worked), ...sealantDemands(worked)];
}

function chaseDemand(stretch: Stretch): Demand {
  const kg = (stretch.lengthMm / 1e3) * chaseKgPerM(stretch);
  return plasterDemand(kg, { low: kg * stretch.lowRatio, high: kg * stretch.highRatio }, stretch.runIds);
}

function plasterDemand(kg: number, range: { low?: number; high: number }, causes: readonly string[]): Demand {
  return { item: 'plaster-one-coat', unit: 'kg', group: 'making-good', measured: kg, ...range, causes };
}

/** Section of a tube of 20 mm oval, mm². Common practice, no source. */
const OVAL_20_MM2 = 220;

/**
 * Plaster for a metre of chase, kg, waste left out: the slot that is usual for what lies in it, less what lies
 * in it. Slots, mm wide × deep: one cable 25 × 20, more 20 wider; an oval tube 30 × 25, more 20 wider and 5
 * deeper; cable above 4 mm² 5 more both ways. Common practice, no source.
 */
export function chaseKgPerM({ cables, containment }: Pick<Stretch, 'cables' | 'containment'>): number {
  const extraMm = Math.max(0, cables.length - 1) * 20;
  const thickMm = cables.some((cable) => cable.lineMm2 > 4) ? 5 : 0;
  const isTube = containment === 'oval' || containment === 'conduit';
  const widthMm = (isTube ? 30 : 25) + extraMm + thickMm;
  const depthMm = (isTube ? 25 : 20) + (extraMm > 0 ? 5 : 0) + thickMm;
  const contentMm2 = cables.reduce(
    (sum, cable) => sum + (isTube ? OVAL_20_MM2 : flatCableSectionMm2(flatCableSize(cable.lineMm2))),
    0,
  );
  const litresPerM = (widthMm * depthMm - contentMm2) / 1e3; // mm² × 1 m = 1e-3 litre
  return litresPerM * PLASTER_KG_PER_LITRE;
}

function surroundDemands(worked: Worked): Demand[] {
  return boxWork(worked)
    .filter(({ box }) => box.build === 'steel')
    .map(({ box, measured, high, depthMm }) => {
      const kg = surroundKg(box.gangs, depthMm);
      return plasterDemand(kg * measured, { high: kg * high }, [box.id]);
    });
}

/** Plaster round a steel box in its hole, and behind it, kg. Box bodies 75 mm high, 75 and 60 mm a further gang wide. */
export function surroundKg(gangs: BackBox['gangs'], depthMm: number): number {
  const heightMm = 75;
  const widthMm = 75 + 60 * (gangs - 1);
  const hole = (heightMm + 2 * HOLE_CLEARANCE_MM) * (widthMm + 2 * HOLE_CLEARANCE_MM);
  const litres = (hole * depthMm - heightMm * widthMm * depthMm) / 1e6; // mm³
  return litres * PLASTER_KG_PER_LITRE;
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

/**
 * Boards of stud walls: a patch over every stud that is drilled behind them, once a bundle; and a drop may meet a noggin
 * that nobody knows of: a patch then, at worst.
 */
function patchDemands({ runs }: Worked): Demand[] {
  const drilled = ownHoles(runs);
  return runs.flatMap((run) => {
    const drops = run.segments.filter(
      ({ medium, direction, certainty }) =>
        medium === 'stud-cavity' && direction === 'vertical' && certainty !== 'pinned',
    ).length;
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
