import { USUAL_CABLE } from '../circuit/usual-cable.ts';
import type { Worked } from '../connections/worked.ts';
import { boxWork } from './box-lines.ts';
import type { Demand } from './demand.ts';
import type { KitCounts } from './kit-counts.ts';

/** Green/yellow tails of steel boxes, and sleeving for every new cable end and every end where an old cable is cut. */
export function earthDemands(worked: Worked, counts: KitCounts): readonly Demand[] {
  return [
    ...tailDemands(worked, counts.boxTailMm / 1000),
    ...sleeveDemands(worked, counts.sleeveMm / 1000),
    ...brownSleeves(worked, counts.sleeveMm / 1000),
  ].filter(({ measured, high = measured }) => high > 0);
}

function tailDemands(worked: Worked, tailM: number): Demand[] {
  const tail = (id: string, measured: number, high: number): Demand => ({
    item: 'earth-single-2.5',
    unit: 'm',
    group: 'cable',
    measured: measured * tailM,
    high: high * tailM,
    causes: [id],
  });
  const fitted = boxWork(worked).filter(({ box }) => box.build === 'steel');
  const counted = new Set(fitted.filter(({ measured }) => measured > 0).map(({ box }) => box.id));
  return [
    ...fitted.map(({ box, measured, high }) => tail(box.id, measured, high)),
    ...metalPlatesOnOldBoxes(worked)
      .filter((id) => !counted.has(id))
      .map((id) => tail(id, 1, 1)),
  ];
}

/** A metal plate that takes the place of another: whether the old box has its tail nobody knows, so one is along. */
function metalPlatesOnOldBoxes({ things }: Worked): readonly string[] {
  const metal = new Set(
    things.accessories.filter(({ features }) => features.includes('metal')).map(({ id }) => id),
  );
  return things.boxes
    .filter(({ id, state, build }) => state === 'found' && build === 'steel' && metal.has(id))
    .map(({ id }) => id);
}

function sleeveDemands(worked: Worked, sleeveM: number): Demand[] {
  const { runs, things } = worked;
  const sleeves = (cpcMm2: number, ends: number, cause: string): Demand => ({
    item: `sleeving-earth-${sleevingBoreMm(cpcMm2)}`,
    unit: 'm',
    group: 'cable',
    measured: ends * sleeveM,
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
  const broughtEnds = oldEndsAtNewPoints(worked).map(({ cpcMm2, pointId }) => sleeves(cpcMm2, 1, pointId));
  return [...newEnds, ...cutEnds, ...broughtEnds];
}

/**
 * Old line conductors where they meet new ones: told apart by themselves in single-phase circuits (BS 7671 514.1.3 by public sources), so
 * none as counted; at the high end a sleeve for every end that a new cable meets, where somebody wants them marked.
 */
function brownSleeves({ runs, proposed }: Worked, sleeveM: number): Demand[] {
  const old = new Set(
    proposed.circuits
      .filter(({ circuit }) => circuit?.colours === 'old' || circuit?.colours === 'mixed')
      .map(({ id }) => id),
  );
  const metOld = new Set(
    proposed.edges
      .filter(({ kind, legId }) => kind === 'cable' && legId !== null)
      .flatMap(({ from, to }) => [from, to]),
  );
  return runs
    .filter(({ circuitIds }) => circuitIds.some((id) => old.has(id)))
    .flatMap((run): Demand[] => {
      const ends = [run.from, run.to].filter(({ nodeId }) => metOld.has(nodeId)).length;
      if (ends === 0) return [];
      return [
        {
          ...{ item: 'sleeving-brown-3', unit: 'm', group: 'cable', measured: 0 },
          high: ends * sleeveM,
          causes: [run.id],
        },
      ];
    });
}

/** Cut ends of old cables that are brought into new points themselves; an old point's own ends have their sleeves. */
function oldEndsAtNewPoints({ proposed, plan }: Worked): readonly { cpcMm2: number; pointId: string }[] {
  const newPoints = new Map(
    proposed.nodes.flatMap(({ id, kind, pointId, state }) =>
      kind !== 'joint' &&
      state === 'new' &&
      pointId !== null &&
      plan.pointById.get(pointId)?.replaces === undefined
        ? [[id, pointId]]
        : [],
    ),
  );
  return proposed.edges
    .filter(({ kind, legId }) => kind === 'cable' && legId !== null)
    .flatMap(({ from, to, cable }) =>
      [from, to].flatMap((node) => {
        const pointId = newPoints.get(node);
        const cpcMm2 = cable?.cpcMm2 ?? USUAL_CABLE.cpcMm2;
        return pointId === undefined || cpcMm2 === 0 ? [] : [{ cpcMm2, pointId }];
      }),
    );
}

/** Bore of the sleeving for a protective conductor, mm. Source: merchants' sizes, from memory. */
export function sleevingBoreMm(cpcMm2: number): number {
  if (cpcMm2 <= 1.5) return 3;
  return cpcMm2 <= 4 ? 4 : 6;
}
