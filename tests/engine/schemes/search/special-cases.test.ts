import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { findSchemes } from '#engine/find-schemes.ts';
import { searchGround } from '#engine/schemes/search/search-ground.ts';
import { waysInHouse } from '#engine/schemes/search/ways-in-house.ts';
import { worksOfScheme } from '#engine/schemes/search/works-of-scheme.ts';
import { tariffFor } from '#engine/schemes/tariff.ts';
import { workHouse } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Job } from '#model/job.ts';
import type { Connection } from '#model/scheme.ts';
import { demoJob, estimateOf } from '../../demo-jobs/demo-estimates.ts';
import { randomHouse } from './random-house.ts';

const library = demoLibrary();
const few = { most: 3, kinds: false } as const;

const withPoints = (job: Job, change: (point: Job['points'][number]) => Job['points'][number]): Job => ({
  ...job,
  points: job.points.map(change),
});

/** Whether two connections begin or end at one accessory that was there. */
function isSharingAPoint(connections: readonly Connection[]): boolean {
  const touched = connections.flatMap((each): readonly string[] => {
    if ('from' in each) return 'point' in each.from ? [each.from.point] : [];
    if (each.kind !== 'ring-extension') return [];
    return each.between.flatMap((end) => ('point' in end ? [end.point] : []));
  });
  return new Set(touched).size < touched.length;
}

describe('the search where a house is not as usual', () => {
  it('branches freely from a radial that is there', () => {
    const ring = randomHouse(1, { found: 3, wanted: 2 });
    const job: Job = {
      ...ring,
      legs: ring.legs.slice(0, 3),
      circuits: ring.circuits.map((circuit) => ({
        ...circuit,
        shape: 'radial' as const,
        device: { standard: 'BS-EN-61009', curve: 'B', ratingA: 20, rcd: { type: 'A', mA: 30 } } as const,
      })),
    };
    const found = findSchemes(job, library, few);
    expect(found.optimal).toBe(true);
    const [best] = found.schemes;
    expect(best?.kind).toBe('spurs');
    const again = estimateOf({ ...job, schemes: best ? [{ ...best.scheme, id: 'again' }] : [] });
    expect(again.schemes[0]?.complies).not.toBe('no');
  });

  it('keeps what is locked in every scheme, and leaves its place to nobody else', () => {
    const job = demoJob('saltglass-row');
    const spur = findSchemes(job, library, { most: 20, kinds: false })
      .schemes.flatMap(({ scheme }) => scheme.connections)
      .find((each) => each.kind === 'spur' && 'point' in each.from);
    if (spur?.kind !== 'spur' || !('point' in spur.from)) throw new Error('no spur found to lock');
    const { point: from } = spur.from;
    const kept: Connection = { ...spur, id: 'kept' };
    const { schemes } = findSchemes(job, library, { most: 20, kinds: false, locked: [kept] });
    expect(schemes.length).toBeGreaterThanOrEqual(20);
    for (const { scheme, estimate } of schemes) {
      expect(scheme.connections[0]).toEqual(kept);
      expect(scheme.locks).toEqual(['kept']);
      expect(
        scheme.connections.filter(
          (each) => 'from' in each && 'point' in each.from && each.from.point === from,
        ),
      ).toEqual([kept]);
      expect(estimate.complies).not.toBe('no');
    }
  });

  it('says of a wanted point without a place that it is not searched for', () => {
    const job = withPoints(demoJob('fernlow-close'), ({ place, ...point }) =>
      point.id === 'b1-kitchen' || place === undefined ? point : { ...point, place },
    );
    const found = findSchemes(job, library, few);
    expect(found.leftOut).toContain('B1 has no place yet, so no way to join it is looked for.');
    expect(found.schemes.length).toBeGreaterThan(0);
    for (const { estimate } of found.schemes) {
      const fails = estimate.findings.filter(
        ({ outcome, origin }) => outcome === 'fails' && origin === 'scheme',
      );
      expect(fails.map(({ rule, subject }) => [rule, subject])).toEqual([['CN2', 'b1-kitchen']]);
    }
  });

  it('joins a wanted fused unit only by the fused spur whose unit it is, and feeds nothing from one with a fixed load', () => {
    for (const { scheme } of findSchemes(demoJob('quarrel-court'), library, { most: 50 }).schemes)
      for (const connection of scheme.connections) {
        const fed = 'feeds' in connection ? connection.feeds.map(({ to }) => to) : [];
        expect(fed).not.toContain('w3-heater1');
        if (connection.kind === 'fused-spur' && connection.unit === 'w3-heater1') expect(fed).toEqual([]);
        expect(connection.kind === 'spur' && connection.to === 'w3-heater1').toBe(false);
      }
  });

  it('finds the empty scheme where nothing is wanted, and no scheme where nothing is there to join on', () => {
    const job = withPoints(demoJob('fernlow-close'), (point) => point);
    const nothingWanted = {
      ...job,
      points: job.points.filter(({ status }) => status !== 'wanted'),
      schemes: [],
    };
    expect(findSchemes(nothingWanted, library, few).schemes.map(({ scheme }) => scheme.connections)).toEqual([
      [],
    ]);
    const nothingThere = {
      ...job,
      circuits: [],
      legs: [],
      boards: [],
      schemes: [],
      points: job.points.filter(({ status }) => status === 'wanted'),
    };
    const none = findSchemes(nothingThere, library);
    expect(none.schemes).toEqual([]);
    expect(none.gap).toBeNull();
    expect(none.bestOfKind.every(({ schemeId, reason }) => schemeId === null && reason !== null)).toBe(true);
  });

  it('say of every kind what bars it, where a point is wanted in the place of another', () => {
    const quarrel = demoJob('quarrel-court');
    const points = quarrel.points.flatMap((point) =>
      point.id === 'w1-livingr' ? [point, { ...point, id: 'w9-again', label: 'W9' }] : [point],
    );
    const barred = findSchemes({ ...quarrel, points }, library);
    expect(barred.schemes).toEqual([]);
    const reasons = barred.bestOfKind.map(({ kind, reason }) => [kind, reason] as const);
    for (const [kind, reason] of reasons.filter(([kind]) => kind === 'spurs' || kind === 'ring-extension'))
      expect(reason, kind).toMatch(/^(Space between plates|Points in one place): .*W9/);
  });

  it('lets a wanted unit without a fixed load feed others, at what a walk over the wiring says', () => {
    const job = withPoints(demoJob('fernlow-close'), (point) => {
      const { load: _, ...bare } = point;
      return point.id === 'b1-kitchen' ? { ...bare, kind: 'fused-unit' } : point;
    });
    const house = workHouse(job, tariffFor(job, library), defaultLengthAllowances);
    const ground = searchGround(house, library, { ways: waysInHouse(house, library) });
    const { schemes } = findSchemes(job, library, { most: 30 });
    const feeding = schemes.filter(({ scheme }) =>
      scheme.connections.some(
        (each) => each.kind === 'fused-spur' && each.unit === 'b1-kitchen' && each.feeds.length > 0,
      ),
    );
    expect(feeding.length).toBeGreaterThan(0);
    // An accessory that two joinings share is opened once, and each of them counts it: such schemes cost less to walk.
    const plain = schemes.filter(({ scheme }) => !isSharingAPoint(scheme.connections));
    expect(plain.length).toBeGreaterThan(20);
    const offsets = plain.map(
      ({ scheme, worksPence }) => worksOfScheme(ground, scheme).millipence / 1000 - worksPence,
    );
    expect(Math.max(...offsets) - Math.min(...offsets)).toBeLessThan(60);
  });

  it('says so where too many points are wanted at once', () => {
    const found = findSchemes(randomHouse(5, { found: 3, wanted: 31 }), library, few);
    expect([found.optimal, found.schemes]).toEqual([false, []]);
    expect(found.leftOut.join()).toContain('up to 30');
  });

  it('says which rule bars a kind that is there but never passes', () => {
    const job = demoJob('fernlow-close');
    const loads = withPoints(job, (point) =>
      point.id === 'b2-kitchen' ? { ...point, load: { watts: 3600, use: 'heater', fixed: true } } : point,
    );
    const { bestOfKind, schemes } = findSchemes(loads, library, { most: 5 });
    for (const { kind, schemeId, reason } of bestOfKind) {
      expect(schemeId === null, kind).toBe(reason !== null);
      if (schemeId !== null) expect(schemes.some(({ scheme }) => scheme.id === schemeId)).toBe(true);
    }
  });
});
