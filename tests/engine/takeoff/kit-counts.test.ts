import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { containmentDemands } from '#engine/takeoff/containment-lines.ts';
import { kitCountsOf, usualCounts } from '#engine/takeoff/kit-counts.ts';
import { allowancesOf, defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { WorkCost } from '#engine/ways/way-tariff.ts';
import type { Counts, Library } from '#model/library.ts';
import { runOf, segmentOf, spotAt } from '#tests/engine/connections/wiring-builder.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { measuredByItem, workedOf } from './worked-builder.ts';

const usual = demoLibrary();
const libraryWith = (counts: Counts): Library => ({ ...usual, norms: { ...usual.norms, counts } });
const when = { date: '2026-11-25', revision: 1 };
const job = demoJob('saltglass-row');

/** The first scheme of a demo job: measured quantities by item, and how many cables are new. */
function taken(library: Library) {
  const [scheme] = estimate(job, library, when).schemes;
  if (scheme === undefined) throw new Error('the job has no scheme');
  const lines = new Map(scheme.takeoff.map((line) => [line.item, line.measured]));
  return {
    lines,
    runs: scheme.worked.runs,
    ends: scheme.worked.runs.flatMap(({ from, to }) => [from.kind, to.kind]),
  };
}

describe('lengths and counts by the firm’s habit', () => {
  it('are the usual ones where the firm says nothing', () => {
    expect(kitCountsOf(usual.norms)).toEqual(usualCounts);
    expect(allowancesOf(usual)).toEqual(defaultLengthAllowances);
    expect(taken(libraryWith({})).lines).toEqual(taken(usual).lines);
  });

  it('lengthen every end and every run by what is left there', () => {
    const before = taken(usual);
    const after = taken(
      libraryWith({ accessoryEndMm: 300, jointEndMm: 250, boardEndMm: 1000, slackMm: 500 }),
    );
    const moreMm =
      200 * before.runs.length +
      before.ends.reduce((sum, kind) => sum + { accessory: 100, joint: 50, board: 250 }[kind], 0);
    const item = 'cable-flat-2.5-1.5';
    expect((after.lines.get(item) ?? 0) - (before.lines.get(item) ?? 0)).toBeCloseTo(moreMm / 1000, 6);
  });

  it('count sleeves, tails and flex by the length', () => {
    const before = taken(usual).lines;
    const after = taken(libraryWith({ sleeveMm: 240, boxTailMm: 300, applianceFlexMm: 1000 })).lines;
    expect(after.get('sleeving-earth-3')).toBeCloseTo(2 * (before.get('sleeving-earth-3') ?? Number.NaN), 9);
    expect(after.get('earth-single-2.5')).toBeCloseTo(2 * (before.get('earth-single-2.5') ?? Number.NaN), 9);
    expect(after.get('flex-0.75')).toBe((before.get('flex-0.75') ?? Number.NaN) / 2);
    expect(taken(libraryWith({ sleeveMm: 0, applianceFlexMm: 0 })).lines.has('sleeving-earth-3')).toBe(false);
    expect(taken(libraryWith({ sleeveMm: 0, applianceFlexMm: 0 })).lines.has('flex-0.75')).toBe(false);
  });

  it('pin capping and screw channel as often as the firm does, one more at each end', () => {
    const lay = { medium: 'surface-channel', containment: 'channel' } as const;
    const channel = segmentOf(spotAt(0, 0, 100), spotAt(2000, 0, 100), lay);
    const capped = segmentOf(spotAt(0, 0, 300), spotAt(0, 0, 1200), {
      medium: 'wall-chase',
      containment: 'capping',
    });
    const worked = workedOf({ runs: [runOf('n', 'a', 'w', [channel]), runOf('m', 'a', 'v', [capped])] });
    const counted = (counts: Counts) => {
      const items = measuredByItem(containmentDemands(worked, kitCountsOf({ ...usual.norms, counts })));
      return [items['screw-and-plug'], items['capping-pin']];
    };
    expect(counted({})).toEqual([5, 4]);
    expect(counted({ channelScrewMm: 400 })).toEqual([6, 4]);
    expect(counted({ cappingPinMm: 450 })).toEqual([5, 3]);
    expect(counted({ channelScrewMm: 399, cappingPinMm: 449 })).toEqual([7, 4]);
  });

  it('weigh ways by as many pins and screws as are counted a metre', () => {
    const price = (item: string) => usual.prices.items.find((row) => row.item === item);
    const unit = (item: string) =>
      ((price(item)?.pricePence ?? Number.NaN) * 1000) / (price(item)?.perQuantity ?? 1);
    const [plain, own] = [usual, libraryWith({ channelScrewMm: 250, cappingPinMm: 150 })].map((library) =>
      tariffOf(library, { chased: 'capping', filling: 'one-coat' }),
    );
    const more = (a: WorkCost | undefined, b: WorkCost | undefined) =>
      (b?.millipence ?? Number.NaN) - (a?.millipence ?? Number.NaN);
    expect(more(plain?.channel, own?.channel)).toBeCloseTo(2 * unit('screw-and-plug'), 6);
    expect(more(plain?.chase.block, own?.chase.block)).toBeCloseTo((10 / 3) * unit('capping-pin'), 6);
  });

  it('are what the search reckons with too', () => {
    const library = libraryWith({ accessoryEndMm: 900, slackMm: 1200, sleeveMm: 400 });
    const [own, plain] = [library, usual].map((of) =>
      findSchemes(job, of, { aim: 'pence', kinds: false, most: 1 }),
    );
    expect([own?.optimal, own?.boundPence]).toEqual([true, own?.schemes[0]?.worksPence]);
    expect(own?.boundPence).toBeGreaterThan(plain?.boundPence ?? Number.NaN);
  });
});
