import type { Worked } from '../connections/worked.ts';
import { boxWork } from './box-lines.ts';
import type { Demand } from './demand.ts';

/** From a steel box's earth terminal to the accessory's, m. Common practice, no source. */
const BOX_TAIL_M = 0.15;
/** Over the bare protective conductor of one cable end, m. Common practice (0.10 to 0.15), no source. */
export const SLEEVE_M = 0.12;

/** Green/yellow tails of steel boxes, and sleeving for every new cable end and every end where an old cable is cut. */
export function earthDemands(worked: Worked): readonly Demand[] {
  return [...tailDemands(worked), ...sleeveDemands(worked)];
}

function tailDemands(worked: Worked): Demand[] {
  return boxWork(worked)
    .filter(({ box }) => box.build === 'steel')
    .map(({ box, measured, high }) => ({
      item: 'earth-single-2.5',
      unit: 'm',
      group: 'cable',
      measured: measured * BOX_TAIL_M,
      high: high * BOX_TAIL_M,
      causes: [box.id],
    }));
}

function sleeveDemands({ runs, things }: Worked): Demand[] {
  const sleeves = (cpcMm2: number, ends: number, cause: string): Demand => ({
    item: `sleeving-earth-${sleevingBoreMm(cpcMm2)}`,
    unit: 'm',
    group: 'cable',
    measured: ends * SLEEVE_M,
    causes: [cause],
  });
  const bare = runs.filter((run) => run.cable.type.startsWith('flat-') && run.cable.cpcMm2 > 0);
  const newEnds = bare.map((run) => sleeves(run.cable.cpcMm2, 2, run.id));
  const cutEnds = things.joints
    .filter((joint) => joint.state === 'new')
    .flatMap((joint) => {
      const meeting = runs.filter((run) => run.from.nodeId === joint.id || run.to.nodeId === joint.id);
      const oldEnds = joint.cables - meeting.length;
      return oldEnds > 0 ? [sleeves(meeting[0]?.cable.cpcMm2 ?? 1.5, oldEnds, joint.id)] : [];
    });
  return [...newEnds, ...cutEnds];
}

/** Bore of the sleeving for a protective conductor, mm. Source: merchants' sizes, from memory. */
export function sleevingBoreMm(cpcMm2: number): number {
  if (cpcMm2 <= 1.5) return 3;
  return cpcMm2 <= 4 ? 4 : 6;
}
