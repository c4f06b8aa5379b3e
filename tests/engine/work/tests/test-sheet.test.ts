import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unitOfLoadSide } from '#engine/circuit/load-side.ts';
import { comparedReadings } from '#engine/proof/compared-readings.ts';
import { readingsTaken } from '#engine/proof/readings/readings-taken.ts';
import { connectionSheet } from '#engine/work/connection-sheet.ts';
import { entered, shownBy } from '#engine/work/tests/answering-reading.ts';
import { isLiveTest, type SheetTest, testGroups } from '#engine/work/tests/sheet-test.ts';
import { testSheet } from '#engine/work/tests/test-sheet.ts';
import { readJob } from '#model/read-job.ts';
import { demoEstimate, demoJob, demoNames, estimateOf, schemeOf } from '../../demo-jobs/demo-estimates.ts';
import { asExpected, filled, readingsFor, testsIn, withReadings } from './filled.ts';

const schemes = demoNames.flatMap((name) =>
  demoEstimate(name).schemes.map((scheme) => ({ name: `${name} ${scheme.id}`, scheme })),
);

/** The one test of a scheme that such a thing is true of. */
function theTest(all: readonly SheetTest[], is: (test: SheetTest) => boolean): SheetTest {
  const found = all.find(is);
  if (found === undefined) throw new Error('There is no such test.');
  return found;
}

describe.each(schemes)('the test sheet of $name', ({ scheme }) => {
  const { worked, proof } = scheme;
  const sheet = testSheet(scheme);
  const tests = testsIn(sheet);

  it('has dead tests before live ones, each once, each with how it is connected', () => {
    const order = sheet.parts.map(({ group }) => testGroups.indexOf(group));
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    const live = sheet.parts.map(({ group }) => isLiveTest(group));
    expect(live.indexOf(true)).toBe(live.lastIndexOf(false) + 1);
    expect(new Set(tests.map(({ id }) => id)).size).toBe(tests.length);
    for (const { connect } of sheet.parts) {
      expect(connect.length).toBeGreaterThan(0);
      for (const words of connect) expect(words).toMatch(/[.:]$/);
    }
  });

  it('tests line and earth at every point once, insulation of every circuit, polarity and loop where something is connected', () => {
    const of = (circuit: string, ...groups: readonly string[]) =>
      tests.filter(({ id, group }) => id.startsWith(`${circuit}/`) && groups.includes(group));
    const workedOn = new Set(
      connectionSheet(worked)
        .places.filter(
          ({ isWorkedOn, kind }) => isWorkedOn && (kind === 'accessory' || kind === 'fused-unit'),
        )
        .map(({ id }) => id),
    );
    for (const { circuit, points } of proof) {
      const all = points.map(({ point }) => point).toSorted();
      expect(
        of(circuit, 'crossed-le', 'r1r2')
          .map(({ subject }) => subject)
          .toSorted(),
      ).toEqual(all);
      expect(of(circuit, 'insulation')).toHaveLength(2);
      const connected = all.filter((point) => workedOn.has(unitOfLoadSide(point)));
      for (const group of ['polarity', 'zs'])
        expect(of(circuit, group).map(({ subject }) => subject)).toEqual(expect.arrayContaining(connected));
    }
    expect(tests.filter(({ group }) => group === 'polarity').length).toBeGreaterThan(0);
  });

  it('is answered, each test by its own reading alone, and the job stays readable', () => {
    const readings = readingsFor(sheet);
    const { job } = worked;
    expect(
      readJob(JSON.parse(JSON.stringify({ ...job, readings: [...job.readings, ...readings] }))),
    ).toMatchObject({
      ok: true,
    });
    for (const reading of readings) {
      const answered = testsIn(testSheet({ worked: withReadings(worked, [reading]), proof })).filter(
        (test) => test.reading !== null,
      );
      expect(answered).toHaveLength(1);
      expect(answered[0]?.reading).toEqual(reading);
    }
    const all = testsIn(filled(scheme));
    for (const { isKept, verdict, expected, limit, id } of all)
      expect(verdict, id).toBe(!isKept ? 'not-read' : expected === null && limit === null ? 'read' : 'fits');
  });

  it('judges by the band as the picture does', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.2, noNaN: true }), (moreOhm) => {
        const after = withReadings(
          worked,
          readingsFor(sheet, (test) => (test.unit === 'Ω' ? (test.expected?.toOhm ?? 0) + moreOhm : null)),
        );
        const judged = testsIn(testSheet({ worked: after, proof }));
        for (const one of proof)
          for (const row of comparedReadings(one, readingsTaken(after.job), 'after')) {
            if (row.fits === null) continue;
            const group = { ends: 'ends', step2: 'crossed-ln', step3: 'crossed-le', r1r2: 'r1r2', zs: 'zs' }[
              row.group
            ];
            const test = judged.find(
              ({ group: of, subject, mark }) =>
                of === group && subject === row.subject && (row.group !== 'ends' || mark === row.name),
            );
            expect(test?.fitsBand, `${row.group} ${row.subject}`).toBe(row.fits);
          }
      }),
      { numRuns: 10 },
    );
  });
});

describe('what is read', () => {
  const scheme = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');
  const sheet = testSheet(scheme);
  /** The one test of a kind answered with a figure. */
  const verdictOf = (is: (test: SheetTest) => boolean, value: number | boolean, testV = 500) => {
    const test = theTest(testsIn(sheet), is);
    const reading = entered(test, { id: 'one', value, takenOn: '2026-11-27', testV });
    const after = testSheet({ worked: withReadings(scheme.worked, [reading]), proof: scheme.proof });
    return theTest(testsIn(after), ({ id }) => id === test.id).verdict;
  };

  it('fits up to the greater of 0.05 Ω and 5 %, and is looked into beyond', () => {
    const is = ({ mark }: SheetTest): boolean => mark === 'r1';
    const { expected } = theTest(testsIn(sheet), is);
    if (expected === null) throw new Error('r1 is expected');
    expect(expected.bandOhm).toBe(0.05);
    expect(verdictOf(is, expected.toOhm + 0.05)).toBe('fits');
    expect(verdictOf(is, expected.toOhm + 0.0501)).toBe('look');
    expect(verdictOf(is, expected.fromOhm - 0.05)).toBe('fits');
    expect(verdictOf(is, expected.fromOhm - 0.0501)).toBe('look');
  });

  it('fits insulation of 1 MΩ and fails at 0.99; under 250 V it is held to nothing', () => {
    // BS 7671 Table 64 (from memory): 500 V, 1 MΩ.
    const is = ({ group }: SheetTest): boolean => group === 'insulation';
    expect(verdictOf(is, 1)).toBe('fits');
    expect(verdictOf(is, 0.99)).toBe('fails');
    expect(verdictOf(is, 0.99, 250)).toBe('fails');
    expect(verdictOf(is, 500, 100)).toBe('read');
  });

  it('fits an RCD that opens in 300 ms and fails at 301', () => {
    // Times of BS EN 61008 (from memory).
    const is = ({ group }: SheetTest): boolean => group === 'rcd';
    expect(verdictOf(is, 300)).toBe('fits');
    expect(verdictOf(is, 301)).toBe('fails');
  });

  it('holds a loop to the limit for cold readings, just within and just beyond, whatever the band says', () => {
    // B32: 218.5 V ÷ 160 A is 1.3656 Ω, of which 80 % (BS 7671 411.4.4 and Appendix 3).
    const is = ({ group }: SheetTest): boolean => group === 'zs';
    const { limit } = theTest(testsIn(sheet), (test) => is(test) && test.at !== null);
    expect(limit).toMatchObject({ bound: 'most', value: expect.closeTo(1.0925, 6) });
    expect(verdictOf(is, 1.0925)).toBe('look');
    expect(verdictOf(is, 1.093)).toBe('fails');
  });

  it('holds a fused unit to the device that protects the cable up to it, what is behind it to its fuse, as the checks do', () => {
    const unit = theTest(testsIn(sheet), ({ group, mark }) => group === 'zs' && mark === 'W4');
    expect(unit.limit).toMatchObject({ value: expect.closeTo(1.0925, 6) });
    const behind = schemeOf(demoEstimate('saltglass-row'), 'fused-beds');
    const loops = testsIn(testSheet(behind)).filter(({ group, limit }) => group === 'zs' && limit !== null);
    const limits = new Set<number>();
    for (const { subject, limit } of loops) {
      const point = behind.proof[0]?.points.find((each) => each.point === subject);
      const value = limit?.bound === 'most' ? limit.value : 0;
      expect(value).toBeCloseTo((point?.zsMaxOhm ?? 0) * 0.8, 6);
      limits.add(Math.round(value * 100) / 100);
    }
    // BS 7671 Table 41.2, from memory: a plug fuse of 13 A serves 2.30 Ω, of which 80 %.
    expect(limits).toContain(1.09);
    expect(limits).toContain(1.84);
  });

  it('is wrong where polarity is, or the button opens nothing', () => {
    for (const group of ['polarity', 'rcd-button']) {
      expect(verdictOf((test) => test.group === group, true)).toBe('fits');
      expect(verdictOf((test) => test.group === group, false)).toBe('fails');
    }
  });

  it('counts after the work alone; of several the last, and is changed in its place', () => {
    const test = theTest(testsIn(sheet), ({ mark }) => mark === 'r1');
    const put = (value: number, id: string) =>
      entered(test, { id, value, takenOn: '2026-11-27', testV: 500 });
    const before = { ...put(9, 'early'), phase: 'before' as const };
    const { worked, proof } = scheme;
    const again = (readings: Parameters<typeof withReadings>[1]) =>
      theTest(
        testsIn(testSheet({ worked: withReadings(worked, readings), proof })),
        ({ id }) => id === test.id,
      );
    expect(again([before]).reading).toBeNull();
    const two = again([put(0.4, 'first'), put(0.5, 'second')]);
    expect(two.reading?.id).toBe('second');
    const kept = { ...put(0.4, 'first'), nullOhm: 0.05, instrument: 'M2' };
    const changed = entered(again([kept]), { id: 'new', value: 0.45, takenOn: '2026-11-28', testV: 500 });
    expect(changed).toEqual({ ...kept, ohm: 0.45 });
    expect(shownBy(changed)).toBe(0.45);
  });

  it('of a spur 0.2 Ω longer than drawn does not fit, while the ring does', () => {
    const longer = filled(scheme, (test) => {
      const value = asExpected(test);
      return test.group === 'crossed-ln' && test.mark === 'W1' && typeof value === 'number'
        ? value + 0.2
        : value;
    });
    expect(
      testsIn(longer)
        .filter(({ verdict }) => verdict === 'look')
        .map(({ mark, group }) => `${group} ${mark}`),
    ).toEqual(['crossed-ln W1']);
  });

  it('has the temperature of the job where it names none, and keeps none that was not written', () => {
    const { job } = scheme.worked;
    const warm = { ...scheme.worked, job: { ...job, site: { ...job.site, conductorC: 45 } } };
    const test = theTest(testsIn(sheet), ({ mark }) => mark === 'r1');
    const reading = entered(test, { id: 'one', value: 0.6, takenOn: '2026-11-27', testV: 500 });
    const after = theTest(
      testsIn(testSheet({ worked: withReadings(warm, [reading]), proof: scheme.proof })),
      ({ id }) => id === test.id,
    );
    // 0.6 Ω at 45 °C is 0.6 ÷ 1.1 at 20 °C, which this proof expects.
    expect(after.offOhm).toBeCloseTo(0.6 / 1.1 - (test.expected?.toOhm ?? 0), 2);
    expect(after.reading).toEqual(reading);
  });
});

describe('a circuit that the scheme brings', () => {
  it('keeps what is read of the whole of it by one of its points, since it is none of the job’s yet', () => {
    const scheme = schemeOf(demoEstimate('fernlow-close'), 'new-radial');
    const tests = testSheet(scheme)
      .parts.filter(({ circuitId }) => circuitId !== null)
      .flatMap((part) => part.tests)
      .filter(({ circuit }) => circuit === null);
    expect(new Set(tests.map(({ group }) => group))).toEqual(
      new Set(['r1r2', 'insulation', 'polarity', 'zs', 'rcd', 'rcd-button']),
    );
    for (const { at, isKept } of tests) {
      expect(isKept).toBe(true);
      expect(scheme.worked.job.points.some(({ id }) => id === at)).toBe(true);
    }
  });
});

describe('a circuit of which little is known', () => {
  it('is tested all the same, with nothing expected', () => {
    const tests = testsIn(testSheet(schemeOf(demoEstimate('saltglass-row-quoting'), 'spurs-rcbo')));
    const ends = tests.filter(({ group }) => group === 'ends');
    expect(ends.map(({ mark, expected }) => [mark, expected])).toEqual([
      ['r1', null],
      ['rn', null],
      ['r2', null],
    ]);
  });

  it('says so where no RCD is known of', () => {
    const { parts } = testSheet(schemeOf(demoEstimate('saltglass-row'), 'off-spur-1'));
    const rcd = parts.find(({ group }) => group === 'rcd');
    expect(rcd?.tests).toEqual([]);
    expect(rcd?.connect[0]).toMatch(/^No RCD is known of/);
  });

  it('has a sheet for a job with nothing in it', () => {
    const job = demoJob('saltglass-row');
    const bare = estimateOf({
      ...job,
      schemes: [{ id: 'none', name: 'Nothing', connections: [], remedies: [], locks: [] }],
    });
    expect(bare.schemes.map((scheme) => testSheet(scheme).parts)).toEqual([[]]);
  });
});
