import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  besideChannel,
  channelOfLeg,
  type FoundChannel,
  foundChannels,
  inNamedChannel,
  intoFoundChannels,
} from '#engine/ways/found-channels.ts';
import type { Segment } from '#engine/ways/run.ts';
import { pathLengthMm } from '#engine/ways/segment.ts';
import type { Leg } from '#model/installation.ts';
import { runOf, segmentOf, spotAt } from '#tests/engine/connections/wiring-builder.ts';

const onWall = { medium: 'surface-channel', containment: 'channel', wallId: 'wall', side: 'left' } as const;
const level = (fromMm: number, toMm: number, heightMm = 80, rest: Partial<Segment> = {}) =>
  segmentOf(spotAt(fromMm, 0, heightMm), spotAt(toMm, 0, heightMm), { ...onWall, ...rest });
const found = (segment: Segment, rest: Partial<FoundChannel> = {}): FoundChannel => ({
  legId: 'leg',
  segment,
  bundle: 'channel/leg',
  size: '25x16',
  reuse: true,
  ...rest,
});
const leg = (channel?: Leg['channel']): Leg => ({
  id: 'leg',
  circuit: 'ring',
  from: { point: 'a' },
  to: { point: 'b' },
  ...(channel && { channel }),
});

describe('new channel beside channel found', () => {
  it('lies on it as far as the two go together', () => {
    expect(besideChannel(level(0, 4000), found(level(1000, 2500)))).toEqual({ fromMm: 1000, toMm: 2500 });
    expect(besideChannel(level(4000, 0), found(level(1000, 2500)))).toEqual({ fromMm: 1500, toMm: 3000 });
    expect(besideChannel(level(0, 4000), found(level(5000, -500)))).toEqual({ fromMm: 0, toMm: 4000 });
  });

  it('is free of it 61 mm off, on another face, across it, or where they meet for less than 300 mm', () => {
    const channel = found(level(0, 4000));
    expect(besideChannel(level(0, 4000, 140), channel)).not.toBeNull();
    expect(besideChannel(level(0, 4000, 141), channel)).toBeNull();
    expect(besideChannel(level(0, 4000, 80, { side: 'right' }), channel)).toBeNull();
    expect(besideChannel(level(0, 4000, 80, { wallId: 'other' }), channel)).toBeNull();
    expect(besideChannel(segmentOf(spotAt(2000, 0, 0), spotAt(2000, 0, 900), onWall), channel)).toBeNull();
    expect(besideChannel(level(3700, 6000), channel)).toEqual({ fromMm: 0, toMm: 300 });
    expect(besideChannel(level(3701, 6000), channel)).toBeNull();
    expect(besideChannel(level(0, 4000, 80, { medium: 'wall-chase' }), channel)).toBeNull();
  });
});

describe('a path into channel found', () => {
  it('is parted where that begins and ends, and takes its name there', () => {
    const parts = intoFoundChannels([level(0, 4000)], [found(level(1000, 2500))]);
    expect(parts.map(({ lengthMm, bundle, inChannelOf }) => [lengthMm, bundle, inChannelOf])).toEqual([
      [1000, null, undefined],
      [1500, 'channel/leg', 'leg'],
      [1500, null, undefined],
    ]);
    expect(parts.map(({ from, to }) => [from.at[0], to.at[0]])).toEqual([
      [0, 1000],
      [1000, 2500],
      [2500, 4000],
    ]);
  });

  it('is left as it is where nobody said that the channel is to be used again, or where it shares one by name', () => {
    const path = [level(0, 4000)];
    expect(intoFoundChannels(path, [found(level(0, 4000), { reuse: false })])).toBe(path);
    const shared = [level(0, 4000, 80, { bundle: 'own' })];
    expect(intoFoundChannels(shared, [found(level(0, 4000))])).toEqual(shared);
  });

  it('goes on from end to end and is as long as before, whatever channels there are', () => {
    const stretch = fc.tuple(fc.integer({ min: -1000, max: 6000 }), fc.integer({ min: -1000, max: 6000 }));
    fc.assert(
      fc.property(stretch, fc.array(stretch, { maxLength: 4 }), ([a, b], channels) => {
        fc.pre(a !== b);
        const path = level(a, b);
        const all = channels.map(([from, to], i) =>
          found(level(from, to), { legId: `leg${i}`, bundle: `channel/leg${i}` }),
        );
        const parts = intoFoundChannels([path], all);
        expect(pathLengthMm(parts)).toBeCloseTo(path.lengthMm, 6);
        expect(parts[0]?.from).toEqual(path.from);
        for (const [i, part] of parts.entries()) {
          const next = parts[i + 1];
          if (next !== undefined) expect(Math.abs(part.to.at[0] - next.from.at[0])).toBeLessThanOrEqual(1);
          const own = all.find(({ legId }) => legId === part.inChannelOf);
          // By hand: what lies in a channel lies between its ends.
          if (own === undefined) continue;
          const ends = [own.segment.from.at[0], own.segment.to.at[0]];
          for (const { at } of [part.from, part.to]) {
            expect(at[0]).toBeGreaterThanOrEqual(Math.min(...ends) - 1e-6);
            expect(at[0]).toBeLessThanOrEqual(Math.max(...ends) + 1e-6);
          }
        }
      }),
    );
  });
});

describe('channel that legs were found in', () => {
  it('is told along each leg with what is known of it, and not where the way is assumed', () => {
    const run = runOf('leg', 'a', 'b', [level(0, 2000), level(2000, 3000, 80, { certainty: 'assumed' })]);
    expect(foundChannels([leg({ size: '16x16' })], new Map([['leg', run]]))).toMatchObject([
      { legId: 'leg', size: '16x16', reuse: false, bundle: 'channel/leg', segment: { lengthMm: 2000 } },
    ]);
    expect(foundChannels([leg()], new Map())).toEqual([]);
  });

  it('has a name only where new cable goes into it, and keeps the one it has', () => {
    const path = [level(0, 2000), level(2000, 3000, 80, { bundle: 'own' })];
    expect(inNamedChannel(leg(), path)).toBe(path);
    expect(inNamedChannel(leg({ reuse: true }), path).map(({ bundle }) => bundle)).toEqual([
      channelOfLeg('leg'),
      'own',
    ]);
  });
});
