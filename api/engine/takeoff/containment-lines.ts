import type { Worked } from '../connections/worked.ts';
import type { Plan } from '../plan/plan.ts';
import { remembered, rememberedOfTwo } from '../plan/remembered.ts';
import type { Run, Segment } from '../ways/run.ts';
import { cappingSizeMm, channelSize, conduitSizeMm, ovalSizeMm } from './containment-size.ts';
import { type Demand, pieceOf } from './demand.ts';
import type { KitCounts } from './kit-counts.ts';
import { type Stretch, stretchesOf } from './wall-stretches.ts';

/** A tube goes this far past the floor or ceiling it leads through, mm. Common practice, no source. */
const PAST_FLOOR_MM = 100;
/** Lengths in which merchants sell tubes, channel and conduit, and capping, mm. Common practice, no source. */
const LENGTH_SOLD_MM = 3000;
const CAPPING_SOLD_MM = 2000;
/** Saddles of rigid plastic conduit up to 25 mm, mm. Source: IET On-Site Guide Table D3, from memory (1.5 m level). */
const SADDLE_SPACING_MM = 1500;

/** Tubes, capping, channel and conduit by what lies in them, with their fittings. */
export function containmentDemands({ runs, plan }: Worked, counts: KitCounts): readonly Demand[] {
  return containmentOfRuns(runs, plan)(counts);
}

const containmentOfRuns = rememberedOfTwo((runs: readonly Run[], plan: Plan) => {
  const stretches = stretchesOf(runs, plan, (segment) => containmentOf(segment) !== 'none');
  const fittings = fittingDemands(runs, stretches);
  return remembered((counts: KitCounts): readonly Demand[] => [
    ...stretches.flatMap((stretch) => stretchDemands(stretch, counts)),
    ...fittings,
  ]);
});

/** What new stretches lie in; of one that goes into channel found, nothing that is bought. */
function containmentOf(segment: Segment): Segment['containment'] {
  if (segment.inChannelOf !== undefined) return 'none';
  if (segment.containment !== 'none') return segment.containment;
  return segment.medium === 'surface-channel' ? 'channel' : 'none';
}

function stretchDemands(stretch: Stretch, counts: KitCounts): Demand[] {
  const { cables } = stretch;
  switch (stretch.containment) {
    case 'oval':
      return [metres(stretch, `oval-${ovalSizeMm(cables)}`, PAST_FLOOR_MM * stretch.voidEnds)];
    case 'capping':
      return [
        metres(stretch, `capping-${cappingSizeMm(cables)}`, 0),
        fixings(stretch, 'capping-pin', Math.ceil(stretch.lengthMm / counts.cappingPinMm) + 1),
      ];
    case 'conduit':
      return conduitDemands(stretch);
    default:
      return channelDemands(stretch, counts);
  }
}

function conduitDemands(stretch: Stretch): Demand[] {
  const size = conduitSizeMm(stretch.cables);
  const saddles = fixings(
    stretch,
    `conduit-saddle-${size}`,
    Math.ceil(stretch.lengthMm / SADDLE_SPACING_MM) + 1,
  );
  return [
    metres(stretch, `conduit-${size}`, PAST_FLOOR_MM * stretch.voidEnds),
    { ...saddles, group: 'containment' },
  ];
}

function channelDemands(stretch: Stretch, { channelScrewMm }: KitCounts): Demand[] {
  const size = channelSize(stretch.cables);
  const couplers = Math.ceil(stretch.lengthMm / LENGTH_SOLD_MM) - 1;
  const demands = [
    metres(stretch, `channel-${size}`, 0),
    fixings(stretch, 'screw-and-plug', Math.ceil(stretch.lengthMm / channelScrewMm) + 1),
  ];
  if (couplers > 0)
    demands.push({ ...fixings(stretch, `channel-coupler-${size}`, couplers), group: 'containment' });
  return demands;
}

function metres(stretch: Stretch, item: string, besideMm: number): Demand {
  const soldM = (stretch.containment === 'capping' ? CAPPING_SOLD_MM : LENGTH_SOLD_MM) / 1e3;
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

/** Bends where channel or conduit turns, caps on channel that ends away from a box, adaptors where conduit meets one. */
function fittingDemands(runs: readonly Run[], stretches: readonly Stretch[]): Demand[] {
  const leading = new Set<string>();
  return runs.flatMap((run) => {
    const bundles = run.segments.flatMap((segment) => segment.bundle ?? []);
    // Cables that share a channel share its fittings: the first run's count.
    const isShared = bundles.length > 0 && bundles.every((bundle) => leading.has(bundle));
    for (const bundle of bundles) leading.add(bundle);
    return isShared ? [] : run.segments.flatMap((_, index) => fittingsAt(run, index, stretches));
  });
}

function fittingsAt(run: Run, index: number, stretches: readonly Stretch[]): Demand[] {
  const segment = run.segments[index];
  if (segment === undefined) return [];
  const containment = containmentOf(segment);
  if (containment !== 'channel' && containment !== 'conduit') return [];
  const stretch = stretches.find(
    (candidate) => candidate.runIds.includes(run.id) && candidate.containment === segment.containment,
  );
  const cables = stretch?.cables ?? [run.cable];
  const size = containment === 'channel' ? channelSize(cables) : conduitSizeMm(cables);
  const part = (name: string, count: number): Demand[] =>
    count === 0
      ? []
      : [
          {
            item: `${containment}-${name}-${size}`,
            unit: 'each',
            group: 'containment',
            measured: count,
            causes: [run.id],
          },
        ];
  const neighbours = [run.segments[index - 1], run.segments[index + 1]];
  const ends = [run.from, run.to];
  const goesOn = neighbours.map((next) => next !== undefined && containmentOf(next) === containment);
  const atBox = neighbours.map((next, side) => next === undefined && ends[side]?.kind === 'accessory');
  // What leads into channel that is there has no open end.
  const intoFound = neighbours.map((next) => next?.inChannelOf !== undefined);
  const closed = [goesOn, atBox, intoFound];
  const open = [0, 1].filter((side) => closed.every((each) => each[side] !== true)).length;
  // A stretch counts the turn into the next one, so that no turn counts twice.
  const bends = part('bend', Number(goesOn[1]));
  if (containment === 'channel') return [...bends, ...part('end', open)];
  return [...bends, ...part('adaptor', atBox.filter(Boolean).length)];
}
