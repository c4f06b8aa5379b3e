import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import { findSchemes, whatIfLegRuns, whyNotConnect } from '#engine/find-schemes.ts';
import { searchGround } from '#engine/schemes/search/search-ground.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { worksOfScheme } from '#engine/schemes/search/works-of-scheme.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import { workHouse } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Job } from '#model/job.ts';
import type { Connection } from '#model/scheme.ts';
import { demoJob, demoNames, estimateOf } from '../../demo-jobs/demo-estimates.ts';

const library = demoLibrary();

function groundOf(job: Job) {
  const house = workHouse(job, tariffOf(library), defaultLengthAllowances);
  return searchGround(house, library, { ways: waysInHouse(house, library) });
}

describe.each(demoNames)('the schemes found for %s', (name) => {
  const job = demoJob(name);
  const found = findSchemes(job, library);

  it('are proved, sorted by the full price, and sanely many', () => {
    expect(found.optimal).toBe(true);
    expect(found.schemes.length).toBeGreaterThanOrEqual(50);
    const gross = found.schemes.map(({ estimate }) => estimate.totals.grossPence);
    expect(gross).toEqual(gross.toSorted((a, b) => a - b));
    expect(Math.min(...found.schemes.map(({ worksPence }) => worksPence))).toBe(found.boundPence);
  });

  it('pass every rule when they are estimated from scratch as the job’s own', () => {
    const schemes = found.schemes.map(({ scheme }) => ({ ...scheme, id: scheme.id.replace('/', '-') }));
    const again = estimateOf({ ...job, schemes });
    for (const [i, scheme] of again.schemes.entries()) {
      expect(scheme.complies, scheme.name).not.toBe('no');
      expect(scheme.totals, scheme.name).toEqual(found.schemes[i]?.estimate.totals);
    }
  });

  it('differ by their works cost as a walk over their wiring says, to the odd box that is deeper', () => {
    const ground = groundOf(job);
    const walked = found.schemes.map(({ scheme }) => worksOfScheme(ground, scheme).millipence / 1000);
    const offset = (walked[0] ?? 0) - (found.schemes[0]?.worksPence ?? 0);
    for (const [i, each] of found.schemes.entries())
      expect(Math.abs((walked[i] ?? 0) - offset - each.worksPence), each.scheme.name).toBeLessThan(30);
  });

  it('cost no less than the cheapest passing scheme of the job itself, where that is in the search', () => {
    const own = estimateOf(job).schemes.filter(({ complies }) => complies !== 'no');
    expect(own.length).toBeGreaterThan(0);
    const isJointed = (id: string): boolean =>
      JSON.stringify(job.schemes.find((each) => each.id === id)).includes('"joint"');
    const best = found.schemes[0]?.estimate.totals.grossPence ?? Number.POSITIVE_INFINITY;
    for (const scheme of own.filter(({ id }) => !isJointed(id)))
      expect(best).toBeLessThanOrEqual(scheme.totals.grossPence * 1.025);
  });
});

describe('the additive works cost against the whole pipeline', () => {
  // Minutes × rate and the bill at what is used, packs left out. What the cables of several connections share (a floor opened
  // once) and what a room takes once (setting up to chase, rolling its covering back) an additive cost cannot see: most of it in the
  // furnished terrace, next to nothing in the flat. What is bought by the box or the opening for the whole job (caulk, filler, sealant, masks) it leaves out.
  // Pence, a little above the most that was seen.
  const most = {
    'saltglass-row': 6500,
    'saltglass-row-quoting': 5500,
    'fernlow-close': 1800,
    'quarrel-court': 1300,
  };
  const usedLibrary = {
    ...library,
    prices: {
      ...library.prices,
      items: library.prices.items.map(({ packQuantity: _, ...price }) => ({
        ...price,
        charge: 'used' as const,
      })),
    },
  };
  it.each(demoNames)('differs between schemes of %s as their cost in full does', (name) => {
    const job = demoJob(name);
    const schemes = findSchemes(job, library, { most: 8 }).schemes;
    const whole = estimate(
      { ...job, schemes: schemes.map(({ scheme }, i) => ({ ...scheme, id: `s${i}` })) },
      usedLibrary,
      { date: '2026-11-25', revision: 1 },
      { depth: 'live' },
    ).schemes.map(({ price }) => price.materialsCostPence + (price.labourMin * price.ratePencePerHour) / 60);
    for (const [i, each] of schemes.entries()) {
      const additive = each.worksPence - (schemes[0]?.worksPence ?? 0);
      const full = (whole[i] ?? 0) - (whole[0] ?? 0);
      expect(Math.abs(additive - full), each.scheme.name).toBeLessThan(most[name]);
    }
  });
});

describe('asking the search', () => {
  const job = demoJob('saltglass-row');

  it('says which rule a spur from the old spur breaks', () => {
    const connection: Connection = {
      id: 'off-spur',
      kind: 'spur',
      from: { point: 's1-bedroom' },
      to: 'w2-bedroom',
    };
    const why = whyNotConnect(job, library, { connection });
    expect(why.answer).toBe('rule');
    expect(why.answer === 'rule' && why.findings.map(({ rule }) => rule)).toContain('SP3');
  });

  it('says how much dearer a longer spur is, and keeps it in the scheme', () => {
    const connection: Connection = {
      id: 'long-spur',
      kind: 'spur',
      from: { point: 'r4-dining1' },
      to: 'w1-living1',
    };
    const why = whyNotConnect(job, library, { connection });
    expect(why.answer).toBe('money');
    if (why.answer !== 'money') return;
    expect(why.morePence).toBeGreaterThan(0);
    expect(why.with.scheme.connections).toContainEqual(connection);
    expect(why.with.scheme.locks).toEqual(['long-spur']);
  });

  it('leaves joints in assumed legs out, says so, and takes them where a person allows it', () => {
    const shut = findSchemes(job, library, { most: 1, kinds: false });
    const isTapped = (one: typeof shut) =>
      one.schemes.some(({ scheme }) =>
        scheme.connections.some((each) => 'from' in each && 'leg' in each.from),
      );
    expect(isTapped(shut)).toBe(false);
    expect(shut.leftOut.join()).toContain('only assumed');
    const open = findSchemes(job, library, { most: 1, kinds: false, allowAssumedLegs: ['leg-r08r09'] });
    expect(open.boundPence).toBeLessThanOrEqual(shut.boundPence);
    expect(isTapped(open)).toBe(open.boundPence < shut.boundPence);
    const locating = open.schemes.flatMap(({ estimate }) =>
      estimate.labour.filter(({ task }) => task === 'locate-leg'),
    );
    expect(locating.length > 0).toBe(isTapped(open));
  });

  it('answers what if a leg ran elsewhere by the same search', () => {
    const leg = job.legs.find(({ id }) => id === 'leg-r08r09');
    const asked = { legId: 'leg-r08r09', via: leg?.via ?? [], options: { most: 1, kinds: false } };
    const { now, then, grossMorePence } = whatIfLegRuns(job, library, asked);
    expect(then.boundPence).toBeLessThanOrEqual(now.boundPence);
    expect(grossMorePence).toBeLessThanOrEqual(0);
  });

  it('gives equal answers to equal questions', () => {
    const brief = (one: ReturnType<typeof findSchemes>) =>
      one.schemes.map(({ scheme, worksPence }) => [scheme, worksPence]);
    const options = { most: 5, kinds: false };
    expect(brief(findSchemes(job, library, options))).toEqual(brief(findSchemes(job, library, options)));
  });
});
