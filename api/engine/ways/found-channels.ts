import type { Leg } from '#model/installation.ts';
import type { Position } from '../plan/plane.ts';
import type { ChannelSize } from './channel-fill.ts';
import { withinSegment } from './position-in-leg.ts';
import type { Run, Segment } from './run.ts';

/** A stretch of channel that is there, with a leg in it. */
export interface FoundChannel {
  readonly legId: string;
  readonly segment: Segment;
  /** What stretches in it are called together. */
  readonly bundle: string;
  /** Null: nobody has looked. */
  readonly size: ChannelSize | null;
  /** Whether new cable is to go into it. */
  readonly reuse: boolean;
}

/** New channel whose middle is no further than this from the one found would lie on it, mm. Common practice, no source. */
const BESIDE_MM = 60;
/** What runs along together for less than this is a crossing or a corner, mm. Common practice, no source. */
const WORTH_IT_MM = 300;

export const isInChannel = ({ medium, containment }: Pick<Segment, 'medium' | 'containment'>): boolean =>
  medium === 'surface-channel' || (medium === 'surface-clipped' && containment === 'channel');

/** Whether a stretch of a leg was found in channel; where its way is only assumed, so is the channel. */
export const isFoundInChannel = (segment: Segment): boolean =>
  segment.certainty !== 'assumed' && isInChannel(segment);

/** What the channel that a leg lies in is called, where the survey has no name for it. */
export const channelOfLeg = (legId: string): string => `channel/${legId}`;

/** The channel that legs were found in, by leg id and along each leg; none where a leg's way is only assumed. */
export function foundChannels(
  legs: readonly Leg[],
  foundRuns: ReadonlyMap<string, Run>,
): readonly FoundChannel[] {
  return legs
    .toSorted((a, b) => (a.id < b.id ? -1 : 1))
    .flatMap(({ id, channel }) =>
      (foundRuns.get(id)?.segments ?? []).filter(isFoundInChannel).map((segment) => ({
        legId: id,
        segment,
        bundle: segment.bundle ?? channelOfLeg(id),
        size: channel?.size ?? null,
        reuse: channel?.reuse === true,
      })),
    );
}

/** A leg's path with the channel named that new cable is to go into, so that what shares it is told. */
export function inNamedChannel({ id, channel }: Leg, segments: readonly Segment[]): readonly Segment[] {
  if (channel?.reuse !== true) return segments;
  return segments.map((segment) =>
    isFoundInChannel(segment) && segment.bundle === null ? { ...segment, bundle: channelOfLeg(id) } : segment,
  );
}

/** From where to where along a new stretch, mm. */
export interface Beside {
  readonly fromMm: number;
  readonly toMm: number;
}

/**
 * Where a new stretch in channel would lie on, or right beside, channel found on the same face of the same wall.
 *
 * @returns null where it does not, or not for long enough to matter.
 */
export function besideChannel(segment: Segment, found: FoundChannel): Beside | null {
  const other = found.segment;
  if (!isInChannel(segment) || segment.wallId === null || segment.lengthMm === 0) return null;
  if (segment.wallId !== other.wallId || segment.side !== other.side) return null;
  const [a, b] = [other.from, other.to].map((position) => along(segment, position));
  if (a === undefined || b === undefined || Math.max(a.offMm, b.offMm) > BESIDE_MM) return null;
  const fromMm = Math.max(0, Math.min(a.alongMm, b.alongMm));
  const toMm = Math.min(segment.lengthMm, Math.max(a.alongMm, b.alongMm));
  return toMm - fromMm < WORTH_IT_MM ? null : { fromMm, toMm };
}

/** How far along a stretch's line a position is, and how far off it. */
function along({ from, to, lengthMm }: Segment, position: Position) {
  const way = [to.at[0] - from.at[0], to.at[1] - from.at[1], to.levelMm - from.levelMm];
  const off = [position.at[0] - from.at[0], position.at[1] - from.at[1], position.levelMm - from.levelMm];
  const alongMm = way.reduce((sum, each, i) => sum + (each * (off[i] ?? 0)) / lengthMm, 0);
  const offMm = Math.hypot(...off.map((each, i) => each - ((way[i] ?? 0) * alongMm) / lengthMm));
  return { alongMm, offMm };
}

/**
 * A new path, its stretches laid into the channel found wherever they would lie on it and it is to be used again. A stretch
 * is parted where the channel found begins or ends; one that shares a channel by name already stays in that.
 */
export function intoFoundChannels(
  segments: readonly Segment[],
  channels: readonly FoundChannel[],
): readonly Segment[] {
  const free = channels.filter(({ reuse }) => reuse);
  if (free.length === 0) return segments;
  return segments.flatMap((segment) => (segment.bundle === null ? laidInto(segment, free) : [segment]));
}

function laidInto(segment: Segment, channels: readonly FoundChannel[]): readonly Segment[] {
  const [channel, ...others] = channels;
  if (channel === undefined) return [segment];
  const beside = besideChannel(segment, channel);
  if (beside === null) return laidInto(segment, others);
  const part = (fromMm: number, toMm: number): Segment[] =>
    toMm - fromMm < 1
      ? []
      : [
          {
            ...segment,
            from: withinSegment(segment, fromMm),
            to: withinSegment(segment, toMm),
            lengthMm: toMm - fromMm,
          },
        ];
  const { fromMm, toMm } = beside;
  return [
    ...part(0, fromMm).flatMap((rest) => laidInto(rest, others)),
    ...part(fromMm, toMm).map((inside) => ({
      ...inside,
      bundle: channel.bundle,
      inChannelOf: channel.legId,
    })),
    ...part(toMm, segment.lengthMm).flatMap((rest) => laidInto(rest, others)),
  ];
}
