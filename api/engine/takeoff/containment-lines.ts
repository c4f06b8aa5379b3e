import type { Worked } from '../connections/worked.ts';
import type { Plan } from '../plan/plan.ts';
import { remembered, rememberedOfTwo } from '../plan/remembered.ts';
import type { Run } from '../ways/run.ts';
import { clipsAlong } from './clip-spacing.ts';
import { fittingDemands } from './containment-fittings.ts';
import { containmentOf } from './containment-of.ts';
import { cappingSizeMm, channelSize, conduitSizeMm, ovalSizeMm } from './containment-size.ts';
import { type Demand, pieceOf } from './demand.ts';
import type { KitCounts } from './kit-counts.ts';
import { type Stretch, stretchesOf } from './wall-stretches.ts';

/** Lengths in which merchants sell tubes, channel and conduit, and capping, mm, where the price list tells no other. Common practice, no source. */
const LENGTH_SOLD_MM = 3000;
const CAPPING_SOLD_MM = 2000;

/** Tubes, capping, channel and conduit by what lies in them, with their fittings. */
export function containmentDemands({ runs, plan }: Worked, counts: KitCounts): readonly Demand[] {
  return containmentOfRuns(runs, plan)(counts);
}

const containmentOfRuns = rememberedOfTwo((runs: readonly Run[], plan: Plan) => {
  const stretches = stretchesOf(runs, plan, (segment) => containmentOf(segment) !== 'none');
  const fittings = fittingDemands(runs, plan, stretches);
  return remembered((counts: KitCounts): readonly Demand[] => [
    ...stretches.flatMap((stretch) => stretchDemands(stretch, counts)),
    ...fittings,
  ]);
});

/**
 * How many pins, screws or saddles hold a straight stretch: one at either end and none further apart than is usual; one in the middle of a
 * stretch shorter than half of that, as a riser to a box is. Common practice, no source.
 */
export const heldBy = ({ lengthMm }: Pick<Stretch, 'lengthMm'>, apartMm: number): number =>
  lengthMm * 2 <= apartMm ? 1 : clipsAlong(lengthMm, apartMm);

function stretchDemands(stretch: Stretch, counts: KitCounts): Demand[] {
  const { cables } = stretch;
  switch (stretch.containment) {
    case 'oval':
      return [
        metres(stretch, `oval-${ovalSizeMm(cables, counts)}`, {
          counts,
          besideMm: counts.tubePastFloorMm * stretch.voidEnds,
        }),
      ];
    case 'capping':
      return [
        metres(stretch, `capping-${cappingSizeMm(cables, counts)}`, { counts, besideMm: 0 }),
        fixings(stretch, 'capping-pin', heldBy(stretch, counts.cappingPinMm)),
      ];
    case 'conduit':
      return conduitDemands(stretch, counts);
    default:
      return channelDemands(stretch, counts);
  }
}

/** On a surface one saddle in so many is of metal, as clips are: plastic alone lets cable hang low in a fire (BS 7671 521.10.202). */
function conduitDemands(stretch: Stretch, counts: KitCounts): Demand[] {
  const size = conduitSizeMm(stretch.cables);
  const saddles = heldBy(stretch, counts.saddleMm);
  const metal = isOnSurface(stretch) ? Math.ceil(saddles / counts.metalClipEvery) : 0;
  const part = (item: string, count: number): Demand[] =>
    count === 0 ? [] : [{ ...fixings(stretch, item, count), group: 'containment' }];
  const sold: Sold = { counts, besideMm: counts.tubePastFloorMm * stretch.voidEnds };
  return [
    metres(stretch, `conduit-${size}`, sold),
    ...part(`conduit-saddle-${size}`, saddles - metal),
    ...part(`conduit-saddle-metal-${size}`, metal),
    ...couplers(stretch, `conduit-coupler-${size}`, soldIn(stretch, `conduit-${size}`, sold)),
  ];
}

function channelDemands(stretch: Stretch, counts: KitCounts): Demand[] {
  const size = channelSize(stretch.cables);
  const sold: Sold = { counts, besideMm: 0 };
  return [
    metres(stretch, `channel-${size}`, sold),
    fixings(stretch, 'screw-and-plug', heldBy(stretch, counts.channelScrewMm)),
    ...couplers(stretch, `channel-coupler-${size}`, soldIn(stretch, `channel-${size}`, sold)),
  ];
}

/** Whether any of it is seen on a wall or ceiling, where it could come down over a way out. */
const isOnSurface = ({ straights }: Stretch): boolean =>
  straights.some(({ run, first, last }) =>
    run.segments.slice(first, last + 1).some(({ medium }) => medium.startsWith('surface-')),
  );

/** What is sold by the length: by the firm's price list, and how much of it goes beside the straight itself. */
interface Sold {
  readonly counts: Pick<KitCounts, 'soldMm'>;
  readonly besideMm: number;
}

/** How many lengths a straight is put together from. */
function soldIn(stretch: Stretch, item: string, { counts, besideMm }: Sold): number {
  return Math.ceil((stretch.lengthMm + besideMm) / lengthSoldMm(stretch, item, counts) - 1e-9);
}

/** The length that the price list sells it in, else the usual one, mm. */
const lengthSoldMm = (
  { containment }: Stretch,
  item: string,
  { soldMm }: Pick<KitCounts, 'soldMm'>,
): number => soldMm.get(item) ?? (containment === 'capping' ? CAPPING_SOLD_MM : LENGTH_SOLD_MM);

/** One between each two lengths that a straight is put together from. */
function couplers(stretch: Stretch, item: string, lengths: number): Demand[] {
  return lengths <= 1 ? [] : [{ ...fixings(stretch, item, lengths - 1), group: 'containment' }];
}

function metres(stretch: Stretch, item: string, { counts, besideMm }: Sold): Demand {
  const soldM = lengthSoldMm(stretch, item, counts) / 1e3;
  const amountM = (ratio: number) => (stretch.lengthMm * ratio + besideMm) / 1e3;
  return {
    item,
    unit: 'm',
    group: 'containment',
    measured: amountM(1),
    low: amountM(stretch.lowRatio),
    high: amountM(stretch.highRatio),
    causes: stretch.runIds,
    pieces: [
      pieceOf({
        cause: stretch.runIds[0] ?? item,
        measuredM: amountM(1),
        lowM: amountM(stretch.lowRatio),
        highM: amountM(stretch.highRatio),
        unbroken: false,
      }),
    ],
    soldM,
  };
}

function fixings({ lowRatio, highRatio, runIds }: Stretch, item: string, count: number): Demand {
  return {
    item,
    unit: 'each',
    group: 'fixings',
    measured: count,
    low: count * lowRatio,
    high: count * highRatio,
    causes: runIds,
  };
}
