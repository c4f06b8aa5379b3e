import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { waysFor } from '#engine/takeoff/board-lines.ts';
import { bondDemands } from '#engine/takeoff/bonding-lines.ts';
import { containmentDemands } from '#engine/takeoff/containment-lines.ts';
import { kitCountsOf, usualCounts } from '#engine/takeoff/kit-counts.ts';
import { metreOfChase, plasterFor, roundBox } from '#engine/takeoff/plaster.ts';
import { protectionDemands } from '#engine/takeoff/protection-lines.ts';
import { allowancesOf, defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { WorkCost } from '#engine/ways/way-tariff.ts';
import type { Counts, Library } from '#model/library.ts';
import {
  runOf,
  schemeOf,
  segmentOf,
  spotAt,
  twinAndEarth,
} from '#tests/engine/connections/wiring-builder.ts';
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
    const { soldMm, ...figures } = kitCountsOf(usual);
    expect({ ...figures, soldMm: new Map() }).toEqual(usualCounts);
    expect([soldMm.get('channel-16x16'), soldMm.get('capping-25')]).toEqual([3000, 2000]);
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
      const items = measuredByItem(containmentDemands(worked, kitCountsOf(libraryWith(counts))));
      return [items['screw-and-plug'], items['capping-pin']];
    };
    expect(counted({})).toEqual([5, 4]);
    expect(counted({ channelScrewMm: 400 })).toEqual([6, 4]);
    expect(counted({ cappingPinMm: 450 })).toEqual([5, 3]);
    expect(counted({ channelScrewMm: 399, cappingPinMm: 449 })).toEqual([7, 4]);
  });

  it('chase, hole, plaster, boards and what is used up by the firm’s own figures', () => {
    const of = (counts: Counts) => taken(libraryWith(counts)).lines;
    const before = of({});
    const measured = (lines: ReadonlyMap<string, number>, item: string) => lines.get(item) ?? Number.NaN;
    const plaster = 'plaster-one-coat';
    expect(measured(of({ oneCoatM2: 4.5 }), plaster)).toBeCloseTo(measured(before, plaster) / 2, 9);
    expect(measured(of({ boxHoleMm: 20 }), plaster)).toBeGreaterThan(measured(before, plaster));
    expect(measured(of({ boardScrews: 0, trapScrews: 0 }), 'screw-floor') || 0).toBe(0);
    expect(measured(of({ nogginsABoard: 4 }), 'noggin-300')).toBeGreaterThan(measured(before, 'noggin-300'));
    expect(measured(of({ sackLitres: 1 }), 'rubble-sack')).toBeGreaterThan(measured(before, 'rubble-sack'));
    expect(measured(of({ boxesAMask: 1, chasedMAMask: 1 }), 'dust-mask')).toBeGreaterThan(
      measured(before, 'dust-mask'),
    );
    expect(measured(of({ cutsABlade: 1 }), 'blade-multitool')).toBeGreaterThan(
      measured(before, 'blade-multitool'),
    );
  });

  it('use up, screw and fill by the firm’s own figures', () => {
    const before = taken(usual).lines;
    const changed = (counts: Counts, item: string) =>
      (taken(libraryWith(counts)).lines.get(item) ?? 0) - (before.get(item) ?? 0);
    const measured = (item: string) => before.get(item) ?? Number.NaN;
    expect(changed({ tapes: 3 }, 'insulating-tape')).toBe(2);
    expect(changed({ tapes: 0 }, 'insulating-tape')).toBe(-1);
    expect(changed({ sheetsAlong: 4 }, 'dust-sheet')).toBe(3);
    expect(changed({ leastMasks: 9 }, 'dust-mask')).toBe(9 - measured('dust-mask'));
    expect(changed({ looseFactor: 5, sackLitres: 1 }, 'rubble-sack')).toBeGreaterThan(
      changed({ sackLitres: 1 }, 'rubble-sack'),
    );
    expect(changed({ boxesAFiller: 1 }, 'filler')).toBeGreaterThan(0);
    expect(changed({ boxesACaulk: 1 }, 'caulk')).toBeGreaterThan(0);
    expect(changed({ plasterKgAPva: 1 }, 'pva')).toBeGreaterThan(0);
    expect(changed({ sunkBoxScrews: 4, surfaceBoxScrews: 4 }, 'screw-and-plug')).toBeCloseTo(
      measured('screw-and-plug'),
      9,
    );
    expect(changed({ unclippedMm: 20_000 }, 'clip-flat-2.5')).toBeLessThan(0);
  });

  it('lay finish as thick and as far past the hole as the firm does', () => {
    const finish = (counts: Counts) => {
      const of = kitCountsOf(libraryWith(counts));
      const kilograms = plasterFor(roundBox(1, 35, of), 'bonding-and-finish', of);
      return kilograms.find(([item]) => item === 'plaster-finish')?.[1] ?? Number.NaN;
    };
    expect(finish({ finishMm: 3 })).toBeCloseTo(1.5 * finish({}), 9);
    // Round a box of 75 × 75 in a hole of 95: 115² − 75² and 95² − 75², mm².
    expect(finish({ finishPastMm: 0 }) / finish({})).toBeCloseTo(
      (95 ** 2 - 75 ** 2) / (115 ** 2 - 75 ** 2),
      9,
    );
  });

  it('take lengths to be off by the firm’s own shares, and never for shorter than they are', () => {
    const range = (counts: Counts) =>
      estimate(job, libraryWith(counts), when).schemes[0]?.worked.runs.map(
        ({ lengthMm, highMm }) => (highMm ?? Number.NaN) - (lengthMm ?? Number.NaN),
      ) ?? [];
    const [plain, none, double] = [
      {},
      { derivedPercent: 0, assumedPercent: 0 },
      { derivedPercent: 10, assumedPercent: 60 },
    ].map(range);
    expect(none?.every((offMm) => offMm === 0)).toBe(true);
    for (const [index, offMm] of (plain ?? []).entries()) expect(double?.[index]).toBeCloseTo(2 * offMm, 0);
    expect(Math.max(...(plain ?? []))).toBeGreaterThan(0);
  });

  it('hold conduit, tubes, boards and enclosures by the firm’s own figures', () => {
    const counts = kitCountsOf(libraryWith({ saddleMm: 500, tubePastFloorMm: 250 }));
    const pipe = segmentOf(spotAt(0, 0, 300), spotAt(2000, 0, 300), {
      medium: 'surface-channel',
      containment: 'conduit',
    });
    const worked = workedOf({ runs: [runOf('n', 'a', 'w', [pipe])] });
    const saddles = (of: typeof counts) =>
      Object.entries(measuredByItem(containmentDemands(worked, of)))
        .filter(([item]) => item.startsWith('conduit-saddle'))
        .reduce((sum, [, count]) => sum + count, 0);
    expect([saddles(usualCounts), saddles(counts)]).toEqual([3, 5]);
    expect([2, 0, 6].map((boardSpareWays) => waysFor(4, { ...usualCounts, boardSpareWays }))).toEqual([
      6, 6, 10,
    ]);
    const scheme = schemeOf({ remedies: [{ kind: 'rcd-enclosure', at: 'ring' }] });
    const tails = (of: typeof counts) =>
      measuredByItem(protectionDemands(workedOf({ scheme }), of))['tails-16'];
    expect([tails(usualCounts), tails(kitCountsOf(libraryWith({ enclosureTailsMm: 1500 })))]).toEqual([
      1, 1.5,
    ]);
  });

  it('cut a slot as wide and as deep as the firm does', () => {
    const cables = [twinAndEarth];
    const litres = (counts: Counts, containment: 'none' | 'oval', of = cables) =>
      metreOfChase({ cables: of, containment }, kitCountsOf(libraryWith(counts))).litres;
    // A millimetre more each way of a slot of 25 × 20: 46 mm² more on a metre.
    expect(litres({ chaseWidthMm: 26, chaseDepthMm: 21 }, 'none') - litres({}, 'none')).toBeCloseTo(0.046, 9);
    expect(litres({ tubeChaseWidthMm: 31, tubeChaseDepthMm: 26 }, 'oval') - litres({}, 'oval')).toBeCloseTo(
      0.056,
      9,
    );
    const two = [twinAndEarth, twinAndEarth];
    expect(litres({ furtherCableMm: 30 }, 'none', two) - litres({}, 'none', two)).toBeCloseTo(0.25, 9);
    expect(litres({ severalDeeperMm: 10 }, 'none', two) - litres({}, 'none', two)).toBeCloseTo(0.225, 9);
    const thick = [{ ...twinAndEarth, lineMm2: 6 }];
    // 35 × 30 in place of 30 × 25.
    expect(litres({ thickCableMm: 10 }, 'none', thick) - litres({}, 'none', thick)).toBeCloseTo(0.3, 9);
    expect(litres({ chaseWidthMm: 5, chaseDepthMm: 5 }, 'none')).toBe(0);
  });

  it('bond by the firm’s length, as far under and over it as the usual one', () => {
    const bonded = (counts: Counts) => bondDemands(job.supply, 'c', kitCountsOf(libraryWith(counts)))[0];
    expect(bonded({})).toMatchObject({ measured: 10, low: 4, high: 20 });
    expect(bonded({ bondMm: 6000 })).toMatchObject({ measured: 6, low: 2.4, high: 12 });
  });

  it('couple channel where the price list’s own lengths end', () => {
    const lay = { medium: 'surface-channel', containment: 'channel' } as const;
    const channel = segmentOf(spotAt(0, 0, 100), spotAt(5000, 0, 100), lay);
    const worked = workedOf({ runs: [runOf('n', 'a', 'w', [channel])] });
    const coupled = (metres: number | null) => {
      const items = usual.prices.items.map((price) =>
        price.item === 'channel-16x16' && metres !== null
          ? { ...price, packQuantity: metres, perQuantity: metres }
          : price,
      );
      const counts = kitCountsOf({ ...usual, prices: { ...usual.prices, items } });
      return measuredByItem(containmentDemands(worked, counts))['channel-coupler-16x16'] ?? 0;
    };
    expect([coupled(null), coupled(2), coupled(5), coupled(1.5)]).toEqual([1, 2, 0, 3]);
    expect(measuredByItem(containmentDemands(worked, usualCounts))['channel-coupler-16x16']).toBe(1);
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
