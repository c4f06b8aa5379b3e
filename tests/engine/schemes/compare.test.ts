import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { compareSchemes, pairToCompare } from '#engine/schemes/compare.ts';
import {
  demoEstimate,
  demoJob,
  demoNames,
  estimateOf,
  schemeOf,
} from '#tests/engine/demo-jobs/demo-estimates.ts';
import { boilerSpur } from '../proof/boiler-spur.ts';

/** A boiler on a fused spur from the one point of a ring, and from another, without a word on their boxes. */
function twoWaysOfBoiler() {
  const job = boilerSpur();
  const [scheme] = job.schemes;
  const from = { point: 'p2' } as const;
  const moved = (scheme?.connections ?? []).map((one) =>
    one.kind === 'fused-spur' ? { ...one, from } : one,
  );
  const other = { ...scheme, id: 't', name: 'From another', connections: moved, remedies: [], locks: [] };
  return { ...job, schemes: [...job.schemes, other] };
}

const fernlow = demoEstimate('fernlow-close');
const fused = schemeOf(fernlow, 'fused-unit');
const ring = schemeOf(fernlow, 'ring-to-b3');
const compared = compareSchemes(fused, ring);

describe('a fused branch against extending the loop', () => {
  it('tells cable, joints and units of each', () => {
    // By hand: 5.9 m to the unit and three runs of 1.6 m; 3.9 + 1.6 + 1.6 + 5.7 m out and back, by two joints.
    expect(compared.a.cable.cableMm).toBeGreaterThan(10_700 * 0.95);
    expect(compared.a.cable.cableMm).toBeLessThan(10_700 * 1.05);
    expect(compared.b.cable.cableMm).toBeGreaterThan(12_800 * 0.95);
    expect(compared.b.cable.cableMm).toBeLessThan(12_800 * 1.05);
    expect([compared.a.newJoints, compared.b.newJoints]).toEqual([0, 2]);
    expect([compared.a.newUnits, compared.b.newUnits]).toEqual([1, 0]);
  });

  it('tells how much each disturbs the house, by the norms', () => {
    expect([compared.a.messPoints, compared.b.messPoints]).toEqual([fused.messPoints, ring.messPoints]);
    const { tasks } = demoLibrary().norms;
    const unit = new Map(tasks.map(({ task, mess }) => [task, mess ?? 0]));
    const summed = fused.labour.reduce(
      (sum, { task, quantity }) => sum + quantity * (unit.get(task) ?? 0),
      0,
    );
    expect(fused.messPoints).toBeCloseTo(summed, 1);
    expect(fused.messPoints).toBeGreaterThan(0);
  });

  it('tells what capacity is left: 26.5 A are named, 13 A are behind the fuse and 32 A on the ring', () => {
    // 3.0 + 1.4 + 1.7 kW at 230 V are 26.5 A.
    const namedA = (3000 + 1400 + 1700) / 230;
    expect(compared.a.room).toHaveLength(1);
    expect(compared.a.room[0]).toMatchObject({ limitedBy: 'fuse', limitA: 13, unnamed: 0 });
    expect(compared.a.room[0]?.namedA).toBeCloseTo(namedA, 9);
    expect(compared.a.room[0]?.leftA).toBeCloseTo(13 - namedA, 9);
    expect(compared.b.room[0]).toMatchObject({ limitedBy: 'device', limitA: 32 });
    expect(compared.b.room[0]?.leftA).toBeCloseTo(32 - namedA, 9);
  });

  it('names what is open in the one and not in the other', () => {
    expect(compared.onlyA.length).toBeGreaterThan(0);
    const open = ['fails', 'decide', 'not-proven'];
    expect(compared.onlyA.every(({ outcome }) => open.includes(outcome))).toBe(true);
    const back = compareSchemes(ring, fused);
    expect(back.onlyA).toEqual(compared.onlyB);
    expect(back.onlyB).toEqual(compared.onlyA);
  });

  it('takes what both must have decided of the job itself for one thing, whatever the schemes are called', () => {
    const subjects = [...compared.onlyA, ...compared.onlyB].map(({ subject }) => subject);
    expect(subjects).not.toContain('fused-unit');
    expect(subjects).not.toContain('ring-to-b3');
    const notified = (scheme: typeof fused): boolean =>
      scheme.findings.some(({ outcome, subject }) => outcome === 'decide' && subject === scheme.id);
    expect([notified(fused), notified(ring)]).toEqual([true, true]);
  });

  it('finds a copy with other ids of its connections to be the same', () => {
    const job = demoJob('fernlow-close');
    const copied = estimateOf({
      ...job,
      schemes: job.schemes.flatMap((scheme) => [
        scheme,
        {
          ...scheme,
          id: `${scheme.id}-again`,
          connections: scheme.connections.map((connection) => ({
            ...connection,
            id: `${connection.id}-again`,
          })),
        },
      ]),
    });
    for (const { id } of job.schemes) {
      const same = compareSchemes(schemeOf(copied, id), schemeOf(copied, `${id}-again`));
      expect([same.differences, same.onlyA, same.onlyB]).toEqual([[], [], []]);
    }
  });

  it('names what is not proven too, so that as many are left out of both lists as both have', () => {
    const job = twoWaysOfBoiler();
    const [a, b] = estimateOf(job).schemes;
    if (a === undefined || b === undefined) throw new Error('no schemes');
    const { onlyA, onlyB, ...both } = compareSchemes(a, b);
    const notProven = (findings: typeof onlyA): number =>
      findings.filter(({ outcome }) => outcome === 'not-proven').length;
    expect(notProven(onlyA)).toBeGreaterThan(0);
    expect(notProven(onlyB)).toBeGreaterThan(0);
    expect(both.a.checks['not-proven'] - notProven(onlyA)).toBe(
      both.b.checks['not-proven'] - notProven(onlyB),
    );
  });

  it('counts the checks by how they come out', () => {
    const { checks } = compared.a;
    expect(checks.fails).toBe(0);
    expect(checks.decide).toBe(fused.findings.filter(({ outcome }) => outcome === 'decide').length);
    const onlyHere = compared.onlyA.filter(({ outcome }) => outcome === 'decide');
    expect(checks.decide).toBeGreaterThanOrEqual(onlyHere.length);
  });

  it('adds up, in each of the two: lines and steps to the price before VAT, that and VAT to the total', () => {
    for (const name of demoNames)
      for (const a of demoEstimate(name).schemes)
        for (const b of demoEstimate(name).schemes) {
          const { differences, steps, samePence, ...both } = compareSchemes(a, b);
          for (const side of ['a', 'b'] as const) {
            const { totals } = both[side];
            const sum = [...differences, ...steps].reduce(
              (all, line) => all + line[`${side}Pence`],
              samePence,
            );
            expect(sum, `${a.id} ${b.id} ${side}`).toBe(totals.netPence);
            const { materialsPence, labourPence, otherPence, contingencyPence } = totals;
            expect(materialsPence + labourPence + otherPence + contingencyPence).toBe(totals.netPence);
            expect(totals.netPence + totals.vatPence).toBe(totals.grossPence);
          }
        }
  });

  it('accounts for all of the difference at cost', () => {
    const between = (kind: string): number =>
      compared.differences
        .filter((one) => one.kind === kind)
        .reduce((sum, { aPence, bPence }) => sum + bPence - aPence, 0);
    expect(between('materials')).toBe(ring.price.materialsCostPence - fused.price.materialsCostPence);
    expect(between('other')).toBe(
      ring.price.other.reduce((sum, { pence }) => sum + pence, 0) -
        fused.price.other.reduce((sum, { pence }) => sum + pence, 0),
    );
    // Each task is rounded to a penny here and their sum there: a penny a task at most.
    const tasks = Math.max(ring.labour.length, fused.labour.length);
    expect(
      Math.abs(between('labour') - (ring.totals.labourPence - fused.totals.labourPence)),
    ).toBeLessThanOrEqual(tasks);
    const sizes = compared.differences.map(({ aPence, bPence }) => Math.abs(aPence - bPence));
    expect(sizes).toEqual(sizes.toSorted((a, b) => b - a));
  });

  it('finds no difference between a scheme and itself', () => {
    const same = compareSchemes(ring, ring);
    expect([same.differences, same.onlyA, same.onlyB]).toEqual([[], [], []]);
  });
});

describe('the room of points that hang on different limits', () => {
  it('is told apart by fuse and by circuit', () => {
    const mixed = schemeOf(demoEstimate('saltglass-row'), 'fused-beds');
    const { room } = compareSchemes(mixed, mixed).a;
    const fuses = room.filter(({ limitedBy }) => limitedBy === 'fuse');
    expect(fuses.map(({ pointIds }) => pointIds)).toContainEqual(['w2-bedroom', 'w3-bedroom']);
    expect(fuses.map(({ limitA }) => limitA)).toContain(3);
    expect(room.filter(({ limitedBy }) => limitedBy === 'device').map(({ pointIds }) => pointIds)).toEqual([
      ['w1-living1'],
    ]);
  });

  it('says which of them are on an unfused spur, where nothing may follow', () => {
    const spurs = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');
    const onSpurs = compareSchemes(spurs, spurs).a.room.flatMap((group) => group.onSpurs);
    expect(onSpurs).toEqual(['w1-living1', 'w2-bedroom', 'w3-bedroom']);
    expect(compared.b.room.flatMap((group) => group.onSpurs)).toEqual([]);
  });
});

describe('the pair that is compared unasked', () => {
  it('is a fused branch and one that carries the ring on, where the job has both', () => {
    expect(pairToCompare(fernlow.schemes)?.map(({ id }) => id)).toEqual(['fused-unit', 'ring-to-b3']);
  });

  it('is else the two cheapest, and those that may go ahead before those that fail', () => {
    const others = fernlow.schemes.filter(({ id }) => id !== 'fused-unit');
    expect(pairToCompare(others)?.map(({ id }) => id)).toEqual(['new-radial', 'ring-to-b3']);
    expect(pairToCompare(others.slice(0, 1))).toBeNull();
  });
});
