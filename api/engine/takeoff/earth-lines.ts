import { metalPlatesOnOldBoxes } from '../connections/box-tails.ts';
import { sleevedEnds } from '../connections/sleeved-ends.ts';
import type { Worked } from '../connections/worked.ts';
import { boxWork } from './box-lines.ts';
import type { Demand } from './demand.ts';
import type { KitCounts } from './kit-counts.ts';

/** Green/yellow tails of steel boxes, and sleeving for every new cable end and every end where an old cable is cut. */
export function earthDemands(worked: Worked, counts: KitCounts): readonly Demand[] {
  return [
    ...tailDemands(worked, counts.boxTailMm / 1000),
    ...sleeveDemands(worked, counts),
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

/** By cause and size, in the order in which the connections stage tells the ends. */
function sleeveDemands(worked: Worked, counts: KitCounts): Demand[] {
  const ends = new Map<string, { readonly item: string; readonly cause: string; count: number }>();
  for (const { cpcMm2, cause } of sleevedEnds(worked)) {
    const item = `sleeving-earth-${sleevingBoreMm(cpcMm2, counts)}`;
    const key = JSON.stringify([cause, item]);
    ends.set(key, { item, cause, count: (ends.get(key)?.count ?? 0) + 1 });
  }
  return [...ends.values()].map(({ item, cause, count }) => ({
    ...{ item, unit: 'm', group: 'cable', measured: (count * counts.sleeveMm) / 1000 },
    causes: [cause],
  }));
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

/** Bore of the sleeving for a protective conductor, mm. */
export function sleevingBoreMm(
  cpcMm2: number,
  counts: Pick<KitCounts, 'sleeveFineBoreMm' | 'sleeveOneBoreMm' | 'sleeveThickBoreMm'>,
): number {
  if (cpcMm2 <= 1.5) return counts.sleeveFineBoreMm;
  return cpcMm2 <= 4 ? counts.sleeveOneBoreMm : counts.sleeveThickBoreMm;
}
