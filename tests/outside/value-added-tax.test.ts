import { describe, expect, it } from 'vitest';
import { percentOfPence, vatWithinPence } from '#engine/price/money.ts';
import { priceScheme } from '#engine/price/price-scheme.ts';
import type { Terms } from '#model/job.ts';
import { listedPrice, priceRequest, smallLibrary, takeoffLine } from '#tests/engine/price/price-material.ts';

const library = smallLibrary([listedPrice('cable', { pricePence: 100_000 })]);

function priceAt(vat: Terms['vat']) {
  const request = priceRequest(library, {
    takeoff: [takeoffLine('cable', 1)],
    terms: { labour: 'typical', vat },
  });
  return priceScheme(request);
}

/** What £1,000 of materials, listed without tax, comes to. */
const cases = [
  // Source: GOV.UK, "VAT for builders": most work on houses is standard-rated at 20 %.
  { vat: 'standard', percent: 20, netPence: 100_000, vatPence: 20_000 },
  // Source: HMRC manual VCONST07100: renovation of a dwelling not lived in for two years, 5 %.
  { vat: 'reduced', percent: 5, netPence: 100_000, vatPence: 5000 },
  // Source: GOV.UK, "VAT for builders": building a new house is zero-rated.
  { vat: 'zero', percent: 0, netPence: 100_000, vatPence: 0 },
  // Source: GOV.UK, "VAT registration": a trader who is not registered charges no VAT and recovers none, so
  // that the tax paid over the counter (20 %) is part of the cost.
  { vat: 'not-registered', percent: 0, netPence: 120_000, vatPence: 0 },
] as const;

describe('value added tax', () => {
  it.each(cases)('by $vat terms is $percent %', ({ vat, percent, netPence, vatPence }) => {
    const price = priceAt(vat);
    expect(price.vatPercent).toBe(percent);
    expect(price.totals).toMatchObject({ netPence, vatPence, grossPence: netPence + vatPence });
  });

  // Source: accountingweb.co.uk on the flat-rate scheme prints £1,000 + VAT = £1,200.
  it('of £1,000 makes £1,200', () => {
    expect(priceAt('standard').totals.grossPence).toBe(120_000);
  });

  // HMRC manual VATREC12010 has both ways of rounding; ours is half up, which never rounds a householder's
  // half penny away. Three lines at 4 p show why it is done once: 3 × 1 p by the line, 2 p on the sum.
  it('is rounded half up, once, on the net total', () => {
    const pennies = smallLibrary([listedPrice('penny', { pricePence: 4 })]);
    const takeoff = [1, 2, 3].map(() => takeoffLine('penny', 1));
    const terms = { labour: 'typical', vat: 'standard' } as const;
    expect(percentOfPence(4, 20) * 3).toBe(3);
    expect(priceScheme(priceRequest(pennies, { takeoff, terms })).totals.vatPence).toBe(2);
    expect(percentOfPence(50, 5)).toBe(3);
  });

  // Source: HMRC, VAT guide (VAT Notice 700), the VAT fraction: 1/6 of a sum at 20 %, 1/21 at 5 %; from memory.
  it('is a sixth of a sum that has it in at 20 %, a twenty-first at 5 %, of what is saved as well', () => {
    expect(vatWithinPence(120_000, 20)).toBe(20_000);
    expect(vatWithinPence(-6000, 20)).toBe(-1000);
    expect(vatWithinPence(2100, 5)).toBe(100);
    expect(vatWithinPence(2100, 0)).toBe(0);
    // A sixth of 9 p is one and a half: half up.
    expect(vatWithinPence(9, 20)).toBe(2);
  });
});
