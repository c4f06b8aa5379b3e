import type { Medium } from '#model/cable.ts';
import type { Worked } from '../connections/worked.ts';
import { rememberedOfTwo } from '../plan/remembered.ts';
import { flatCableSize } from '../ways/flat-cable-size.ts';
import type { Run, Segment } from '../ways/run.ts';
import { clipSpacing, clipsAlong } from './clip-spacing.ts';
import type { Demand } from './demand.ts';
import type { KitCounts } from './kit-counts.ts';
import { lengthRatios } from './run-length.ts';

/** Where cable is clipped to what it runs along. In studs it hangs, in walls and the ground it is held. */
const clippedIn: ReadonlySet<Medium> = new Set<Medium>([
  'void-along',
  'void-across',
  'void-open',
  'wall-chase',
  'surface-clipped',
  'riser',
  'loft',
  'outside',
]);

/** Clips of every run by orientation and cable width, none in tubes and joist holes. */
export function clipDemands({ runs }: Worked, counts: KitCounts): readonly Demand[] {
  return clipsAlongRuns(runs, counts);
}

const clipsAlongRuns = rememberedOfTwo((runs: readonly Run[], counts: KitCounts): readonly Demand[] =>
  runs.flatMap((run) => run.segments.flatMap((segment) => segmentDemands(run, segment, counts))),
);

function segmentDemands(run: Run, segment: Segment, counts: KitCounts): Demand[] {
  if (isInChannel(segment))
    return [clips(run, 'clip-metal', Math.ceil(segment.lengthMm / counts.metalClipInChannelMm))];
  const count = clipCount(run, segment, counts);
  if (count === 0) return [];
  const all = clips(run, `clip-flat-${clipSizeMm2(run.cable.lineMm2)}`, count);
  if (segment.medium !== 'surface-clipped') return [all];
  const metal = Math.ceil(count / counts.metalClipEvery);
  return [{ ...all, ...amounts(run, count - metal) }, clips(run, 'clip-metal', metal)];
}

function isInChannel({ medium, containment }: Segment): boolean {
  return medium === 'surface-channel' || containment === 'channel';
}

function clips(run: Run, item: string, count: number): Demand {
  return { item, unit: 'each', group: 'fixings', ...amounts(run, count), causes: [run.id] };
}

function amounts(run: Run, count: number) {
  const { lowRatio, highRatio } = lengthRatios(run);
  return { measured: count, low: count * lowRatio, high: count * highRatio };
}

/** Clips on one straight stretch, its two ends included. */
export function clipCount(
  { cable }: Run,
  segment: Segment,
  { unclippedMm }: Pick<KitCounts, 'unclippedMm'>,
): number {
  if (segment.containment !== 'none' || !clippedIn.has(segment.medium)) return 0;
  if (segment.lengthMm < unclippedMm || segment.joistsCrossed > 0) return 0;
  const spacing = clipSpacing(flatCableSize(cable.lineMm2).widthMm);
  const isVertical = segment.direction === 'vertical';
  return clipsAlong(segment.lengthMm, isVertical ? spacing.verticalMm : spacing.horizontalMm);
}

const clipSizesMm2 = [1.5, 2.5, 4, 6, 10, 16] as const;

function clipSizeMm2(lineMm2: number): number {
  return clipSizesMm2.find((sizeMm2) => sizeMm2 >= lineMm2) ?? 16;
}
