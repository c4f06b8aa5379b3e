import { describe, expect, it } from 'vitest';
import { channelCapacity } from '#data/standards/channel-capacity.ts';
import { channelBeside } from '#engine/rules/channel-beside.ts';
import { CHANNEL_SIZES, type ChannelSize, channelTakes } from '#engine/ways/channel-fill.ts';
import { leg } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { twinAndEarth } from '#tests/engine/connections/wiring-builder.ts';
import { demoJob, estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';

const quarrel = demoJob('quarrel-court');
const withChannels = (channel: { size?: ChannelSize; reuse?: true }): Job => ({
  ...quarrel,
  legs: quarrel.legs.map((each) => ({ ...each, channel })),
});
const plain = schemeOf(estimateOf(quarrel), 'ring-by-w2');
const estimated = (channel: { size?: ChannelSize; reuse?: true }) =>
  schemeOf(estimateOf(withChannels(channel)), 'ring-by-w2');
const said = (scheme: typeof plain) =>
  scheme.findings
    .filter(({ rule }) => rule === channelBeside.id)
    .map(({ outcome, messageId, subject }) => [subject, outcome, messageId]);

describe('channel beside channel found', () => {
  it('[CH1] advises to set it off where nobody knows the one found, or where that takes the cable too', () => {
    const run = 'c1-w2-ring/cable-1';
    expect(said(plain)).toEqual([[run, 'advice', 'besideUnknown']]);
    expect(said(estimated({ size: '25x16' }))).toEqual([[run, 'advice', 'besideFits']]);
    expect(said(estimated({ size: '16x16' }))).toEqual([[run, 'passes', 'besideFull']]);
  });

  it('[CH1] holds what goes into the one found against 45 %, and proves nothing where its size is not known', () => {
    const outcomes = (size?: ChannelSize) =>
      said(estimated({ reuse: true, ...(size && { size }) })).map(([, ...rest]) => rest.join(' '));
    expect(outcomes('25x16')).toEqual(['passes within']);
    expect(outcomes('16x16')).toEqual(['decide overfull']);
    expect(outcomes()).toEqual(['not-proven sizeUnknown']);
    expect(channelBeside.couldFail).toBe(false);
  });

  it('is what the reader takes sizes by, and every size takes what the table says', () => {
    const sizes = leg.shape.channel.unwrap().shape.size.unwrap().options;
    expect(sizes).toEqual(CHANNEL_SIZES);
    // By hand at 54.1 mm² for a rounded 2.5 mm² cable: as many as go into each capacity, in channel wide enough.
    for (const { name, capacityMm2 } of channelCapacity.rows) {
      const most = Math.floor(capacityMm2 / 54.1);
      const cables = (count: number) => Array.from({ length: count }, () => twinAndEarth);
      expect([name, channelTakes(name, cables(most)), channelTakes(name, cables(most + 1))]).toEqual([
        name,
        true,
        false,
      ]);
    }
  });
});

describe('channel found that is used again', () => {
  const metres = (scheme: typeof plain, task: string) =>
    scheme.labour.find((each) => each.task === task)?.quantity ?? 0;
  const boughtM = (scheme: typeof plain) =>
    scheme.takeoff.find(({ item }) => item === 'channel-16x16')?.measured ?? 0;

  it('saves as much channel as lies in it, and the cable is laid in there', () => {
    const reused = estimated({ size: '25x16', reuse: true });
    const insideM =
      reused.runs
        .flatMap(({ segments }) => segments)
        .reduce((sum, { inChannelOf, lengthMm }) => sum + (inChannelOf === undefined ? 0 : lengthMm), 0) /
      1000;
    expect(insideM).toBeCloseTo(2, 6);
    expect(boughtM(plain) - boughtM(reused)).toBeCloseTo(insideM, 6);
    expect(metres(plain, 'fit-channel') - metres(reused, 'fit-channel')).toBeCloseTo(insideM, 6);
    expect(metres(reused, 'lay-in-channel')).toBeCloseTo(insideM, 6);
    expect(metres(plain, 'lay-in-channel')).toBe(0);
    const cableM = (scheme: typeof plain) =>
      scheme.takeoff.find(({ item }) => item === 'cable-flat-2.5-1.5')?.measured;
    expect(cableM(reused)).toBeCloseTo(cableM(plain) ?? Number.NaN, 6);
    expect(reused.takeoff.some(({ item }) => item.startsWith('channel-end'))).toBe(false);
    expect(reused.totals.grossPence).toBeLessThan(plain.totals.grossPence);
  });

  it('makes cables carry less that then lie together, as the checks of capacity say', () => {
    const fails = (scheme: typeof plain) =>
      scheme.findings.filter(({ outcome }) => outcome === 'fails').map(({ rule }) => rule);
    expect(fails(plain)).toEqual([]);
    // Two cables of a ring in one channel: 23 × 0.80 = 18.4 A, below 20 A (Tables 4D2A, 4C1).
    expect(fails(estimated({ size: '25x16', reuse: true }))).toContain('RG4');
  });
});
