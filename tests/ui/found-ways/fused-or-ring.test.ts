import { describe, expect, it } from 'vitest';
import { labelsOf } from '#drawing/label-of.ts';
import { fuseWords } from '#engine/quotation/fuse-said.ts';
import type { Job } from '#model/job.ts';
import { demoEstimate, demoJob, estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { type WeighedRow, weighed } from '../../../ui/found-ways/fused-or-ring.ts';
import { pounds } from '../../../ui/written.ts';

const rows = (result = demoEstimate('saltglass-row')): ReadonlyMap<string, WeighedRow> => {
  const [fused, ring] = [schemeOf(result, 'fused-beds'), schemeOf(result, 'ring-to-w2')];
  return new Map(weighed({ fused, ring }, labelsOf(fused.worked)).map((row) => [row.what, row]));
};

const loaded = (loads: Readonly<Record<string, { watts: number; use: string }>>): Job => {
  const job = demoJob('saltglass-row');
  const points = job.points.map((point) => {
    const load = loads[point.label];
    return load === undefined ? point : { ...point, load: { ...load, fixed: false } };
  });
  return { ...job, points };
};

describe('a 13 A fuse', () => {
  it('operates with kettle, toaster and air fryer at once: 26.5 A, as the trade reckons it', () => {
    const loads = [
      { use: 'kettle', watts: 3000 },
      { use: 'toaster', watts: 1400 },
      { use: 'air fryer', watts: 1700 },
    ];
    // 6,100 W at 230 V; common practice, no source.
    expect(fuseWords(13, loads)).toMatch(
      /^Kettle 3\.0 kW, toaster 1\.4 kW and air fryer 1\.7 kW at once draw 26\.5 A: more/,
    );
    expect(fuseWords(13, [])).toMatch(
      /No load is named. As an example: .*26\.5 A: more than the 13 A fuse carries, and sooner or later it blows/,
    );
  });

  it('carries what is within it, to the tenth of an ampere', () => {
    expect(fuseWords(13, [{ use: 'lamp', watts: 230 }])).toBe(
      'Lamp 0.2 kW draws 1.0 A: within the 13 A fuse, with 12.0 A left for everything else behind it.',
    );
  });
});

describe('a fused branch against carrying the ring on', () => {
  it('has both prices as their schemes have them', () => {
    const result = demoEstimate('saltglass-row');
    const pay = rows(result).get('To pay');
    expect(pay?.fused).toBe(`${pounds(schemeOf(result, 'fused-beds').totals.grossPence)}, with VAT`);
    expect(pay?.ring).toBe(`${pounds(schemeOf(result, 'ring-to-w2').totals.grossPence)}, with VAT`);
  });

  it('names the loads behind the fuse, and leaves out the unit of one appliance, which both have', () => {
    const result = estimateOf(
      loaded({ W2: { watts: 3000, use: 'fan heater' }, W3: { watts: 2000, use: 'hair dryer' } }),
    );
    const row = rows(result).get('What the fuse does');
    expect(row?.fused).toMatch(
      /Fan heater 3\.0 kW and hair dryer 2\.0 kW at once draw 21\.7 A: more than the 13 A fuse/,
    );
    expect(row?.fused).not.toMatch(/boiler/i);
    expect(row?.ring).toBe('No fuse stands before the new outlets; each plug has its own.');
  });

  it('says what either allows later, of this house', () => {
    const row = rows().get('Later on');
    expect(row?.fused).toBe(
      'More outlets may be joined on behind the 13 A fuse of W2 and W3; all share what it carries. Nothing more may be joined on at W1 without a fuse.',
    );
    expect(row?.ring).toBe(
      'W2 is a point of the ring: a spur may begin there, or the ring be carried on again. Nothing more may be joined on at W1 and W3 without a fuse.',
    );
    const full = estimateOf(
      loaded({ W2: { watts: 3000, use: 'fan heater' }, W3: { watts: 2000, use: 'hair dryer' } }),
    );
    expect(rows(full).get('Later on')?.fused).toContain('its named loads take all of it');
  });

  it('says what is shared', () => {
    expect(rows().get('Capacity left')?.fused).toMatch(/W2 and W3: share one 13 A fuse/);
  });
});
