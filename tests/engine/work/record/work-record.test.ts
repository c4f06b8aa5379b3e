import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { workRecord } from '#engine/work/record/work-record.ts';
import { shownBy } from '#engine/work/tests/answering-reading.ts';
import { testSheet } from '#engine/work/tests/test-sheet.ts';
import type { Reading } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { demoEstimate, demoJob, demoNames, schemeOf } from '../../demo-jobs/demo-estimates.ts';
import { asExpected, readingsFor, testsIn } from '../tests/filled.ts';
import { allFields, fieldOf, onlyCircuit, recordFor } from './record-fixtures.ts';

const { firm } = demoLibrary();
const schemes = demoNames.flatMap((name) => {
  const estimate = demoEstimate(name);
  return estimate.schemes.map((scheme) => ({ name: `${name} ${scheme.id}`, estimate, scheme }));
});

describe.each(schemes)('the record of $name, before the work', ({ estimate, scheme }) => {
  const record = workRecord({ estimate, scheme, firm, state: 'S' });

  it('has a part for each circuit touched, each field once, and a value only where it says from where', () => {
    expect(record.circuits.map(({ circuitId }) => circuitId)).toEqual(scheme.worked.circuitIds);
    for (const fields of [
      record.work,
      record.supply,
      ...record.circuits.flatMap(({ particulars, tests, means }) => [particulars, tests, means]),
    ]) {
      const ids = fields.map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
    }
    for (const { id, value, from, certainty, figure } of allFields(record)) {
      expect([id, value === null]).toEqual([id, from === 'person' || from === 'expected']);
      expect([id, certainty === 'unknown']).toEqual([id, value === null]);
      if (value === null) expect([id, figure]).toEqual([id, null]);
    }
  });

  it('shows nothing as measured, and what is expected beside empty fields alone', () => {
    expect(allFields(record).filter(({ from }) => from === 'measured')).toEqual([]);
    const results = record.circuits.flatMap(({ tests }) => tests);
    expect(results.length).toBeGreaterThan(0);
    for (const { id, value, keepsLimit } of results)
      expect([id, value, keepsLimit]).toEqual([id, null, null]);
    for (const { expected, from } of allFields(record)) expect(expected === null).toBe(from !== 'expected');
    expect(record.lastReadOn).toBeNull();
    expect(record.toSettle.filter((words) => /not read yet/.test(words))).toHaveLength(
      record.circuits.length,
    );
  });

  it('describes what is done to each circuit, every connection and remedy in one of them', () => {
    const said = record.circuits.flatMap(({ described }) => described);
    const wanted = scheme.worked.job.points.filter(({ status }) => status === 'wanted');
    for (const { label } of wanted) expect(said.join(' ')).toMatch(new RegExp(`\\b${label},`));
    expect(said.length).toBeGreaterThanOrEqual(
      (scheme.worked.scheme?.connections.length ?? 0) + (scheme.worked.scheme?.remedies.length ?? 0),
    );
    for (const words of said) expect(words).toMatch(/^[A-Z].*\.$/);
  });
});

const withReadings = (job: Job, readings: readonly Reading[]): Job => ({
  ...job,
  readings: [...job.readings, ...readings],
});

describe('the record once it was tested', () => {
  const job = demoJob('saltglass-row');
  const scheme = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');
  const sheet = testSheet(scheme);
  const readings = readingsFor(sheet).map((reading) => ({ ...reading, instrument: 'Multifunction 1' }));
  const record = recordFor(withReadings(job, readings), 'spurs-rcbo');
  const { tests, means } = onlyCircuit(record);
  const figures = (group: readonly string[]): readonly number[] =>
    testsIn(sheet).flatMap((test) => {
      const own = group.includes(test.group) ? readings[testsIn(sheet).indexOf(test)] : undefined;
      const shown = own === undefined ? null : shownBy(own);
      return typeof shown === 'number' ? [shown] : [];
    });

  it('has what the instruments showed: ends, the highest R1 + R2 and Zs, insulation, polarity, the RCD', () => {
    expect(['r1', 'rn', 'r2'].map((id) => fieldOf(tests, id).figure)).toEqual(figures(['ends']));
    expect(fieldOf(tests, 'r1r2')).toMatchObject({
      figure: Math.max(...figures(['crossed-le', 'r1r2'])),
      from: 'measured',
      certainty: 'measured',
      note: null,
    });
    expect(fieldOf(tests, 'r1r2').value).toMatch(/ at S1$/);
    expect(fieldOf(tests, 'zs').figure).toBe(Math.max(...figures(['zs'])));
    expect(fieldOf(tests, 'zs').keepsLimit).toBe(true);
    // Ze + R1 + R2 as they were read, at the point where R1 + R2 is highest: beside the reading, never in its place.
    const ze = figures(['supply'])[0] ?? Number.NaN;
    const most = Math.max(...figures(['crossed-le', 'r1r2']));
    expect(fieldOf(tests, 'zs').note).toContain(`= ${Number((ze + most).toFixed(2))}\u00a0Ω at S1.`);
    expect([fieldOf(tests, 'ir-ln').figure, fieldOf(tests, 'ir-lne').figure]).toEqual(
      figures(['insulation']),
    );
    expect(fieldOf(tests, 'ir-voltage')).toMatchObject({ figure: 500, unit: 'V', from: 'measured' });
    expect(fieldOf(tests, 'polarity')).toMatchObject({ value: 'right', keepsLimit: true });
    expect([fieldOf(tests, 'rcd-time').figure]).toEqual(figures(['rcd']));
    expect(fieldOf(tests, 'rcd-button').value).toBe('opened');
    expect(fieldOf(means, 'instruments').value).toBe('Multifunction 1');
    expect(record.lastReadOn).toBe('2026-11-27');
    expect(record.toSettle).toEqual([]);
  });

  it('tells, before anything is read, where a tester shows most and where Ze + R1 + R2 is most: they are two points', () => {
    const { tests: unread } = onlyCircuit(recordFor(job, 'spurs-rcbo'));
    const zs = fieldOf(unread, 'zs');
    // With the ring fed both ways W4, on a spur near its middle, reads more than S1; by the crossed test S1 has the highest R1 + R2.
    expect(zs.note).toMatch(/^Read live the highest is expected at W4, 0\.57\sΩ; .* at S1, 0\.67\sΩ\.$/);
    expect(zs.expected?.fromOhm).toBeCloseTo(0.57, 2);
    expect(zs.value).toBeNull();
  });

  it('leaves to the person what no instrument of the sheet shows', () => {
    for (const id of ['r2-alone', 'ir-le', 'ir-ne', 'afdd-button', 'spd-indicator'])
      expect(fieldOf(tests, id)).toMatchObject({ value: null, from: 'person' });
    for (const id of ['serials', 'limitations'])
      expect(fieldOf(means, id)).toMatchObject({ value: null, from: 'person' });
    expect(fieldOf(record.work, 'completed')).toMatchObject({ value: null, from: 'person' });
  });

  it.each([
    ['taken before the work', (reading: Reading): Reading => ({ ...reading, phase: 'before' })],
    ['only assumed', (reading: Reading): Reading => ({ ...reading, certainty: { ohm: 'assumed' } })],
    ['not known', (reading: Reading): Reading => ({ ...reading, certainty: { ok: 'unknown' } })],
  ] as const)('counts no reading that was %s', (_, made) => {
    const untested = recordFor(withReadings(job, readings.map(made)), 'spurs-rcbo');
    expect(onlyCircuit(untested).tests.filter(({ value }) => value !== null)).toEqual([]);
  });

  it('says what fails, and that it is in the way of a signature', () => {
    const bad = readingsFor(sheet, (test) =>
      test.group === 'zs' ? 9 : test.group === 'polarity' ? test.mark !== 'W1' : asExpected(test),
    );
    const failed = recordFor(withReadings(job, bad), 'spurs-rcbo');
    const circuit = onlyCircuit(failed);
    expect(fieldOf(circuit.tests, 'zs')).toMatchObject({ figure: 9, keepsLimit: false });
    expect(fieldOf(circuit.tests, 'polarity')).toMatchObject({ value: 'WRONG at W1', keepsLimit: false });
    expect(failed.toSettle.join(' ')).toMatch(/tests beyond the limit or wrong\. Put it right/);
  });

  it('never ticks a half-made test: polarity of one point of several is no result', () => {
    const one = readings.filter(({ kind }) => kind === 'polarity').slice(0, 1);
    const { tests: half } = onlyCircuit(recordFor(withReadings(job, one), 'spurs-rcbo'));
    expect(fieldOf(half, 'polarity')).toMatchObject({ value: null, from: 'person' });
    expect(fieldOf(half, 'polarity').note).toMatch(/^1 of \d+ read\. Right so far\.$/);
  });

  it('takes a reading beyond its limit before a higher one that keeps its own', () => {
    const fernlow = demoJob('fernlow-close');
    const own = testSheet(schemeOf(demoEstimate('fernlow-close'), 'fused-unit'));
    const zs = testsIn(own)
      .filter(({ group }) => group === 'zs')
      .toSorted((a, b) => limitOf(a) - limitOf(b));
    const [tight, loose] = [zs[0], zs.at(-1)];
    if (tight === undefined || loose === undefined) throw new Error('no loops');
    // Behind a plug fuse more is allowed than before it.
    expect(limitOf(loose)).toBeGreaterThan(limitOf(tight) + 0.1);
    const both = readingsFor(own, (test) =>
      test.id === loose.id ? limitOf(loose) - 0.01 : test.id === tight.id ? limitOf(tight) + 0.01 : null,
    );
    const read = onlyCircuit(recordFor(withReadings(fernlow, both), 'fused-unit')).tests;
    expect(fieldOf(read, 'zs')).toMatchObject({
      value: expect.stringContaining(`at ${tight.mark}`),
      keepsLimit: false,
    });
  });

  it('takes R2, insulation measured apart, Ze, Zdb and fault current where they were read after the work', () => {
    const after = { phase: 'after', takenOn: '2026-11-27' } as const;
    const circuit = 'ring-house';
    const more: readonly Reading[] = [
      { ...after, id: 'm1', kind: 'loop', loop: 'cpc', from: 'A', at: 'r1-hallway', ohm: 0.21, circuit },
      { ...after, id: 'm2', kind: 'insulation', between: 'L-cpc', megohm: 0.4, testV: 250, circuit },
      { ...after, id: 'm3', kind: 'insulation', between: 'N-cpc', megohm: 150, testV: 500, circuit },
      { ...after, id: 'm4', kind: 'ze', ohm: 0.25 },
      { ...after, id: 'm5', kind: 'ze', at: 'board-hall', ohm: 0.26 },
      { ...after, id: 'm6', kind: 'pfc', kA: 0.92 },
    ];
    const known = recordFor(withReadings(job, more), 'spurs-rcbo');
    const { tests: read, particulars } = onlyCircuit(known);
    expect(fieldOf(read, 'r2-alone')).toMatchObject({ figure: 0.21, from: 'measured' });
    expect(fieldOf(read, 'ir-le')).toMatchObject({ figure: 0.4, keepsLimit: false });
    expect(fieldOf(read, 'ir-ne')).toMatchObject({ figure: 150, keepsLimit: true });
    // With less than 250 V nothing is proved: BS 7671 643.3.3, from memory.
    const weak = more.map((reading) => (reading.id === 'm3' ? { ...reading, testV: 100 } : reading));
    const unproved = onlyCircuit(recordFor(withReadings(job, weak), 'spurs-rcbo')).tests;
    expect(fieldOf(unproved, 'ir-ne')).toMatchObject({ figure: 150, keepsLimit: null });
    expect(fieldOf(read, 'ir-voltage')).toMatchObject({ value: '500, 250\u00a0V', figure: null });
    expect(fieldOf(known.supply, 'ze')).toMatchObject({ figure: 0.25, from: 'measured' });
    expect(fieldOf(particulars, 'zdb')).toMatchObject({ figure: 0.26, from: 'measured' });
    expect(fieldOf(known.supply, 'pfc')).toMatchObject({ figure: 0.92, from: 'measured' });
  });
});

const limitOf = ({ limit }: { readonly limit: ReturnType<typeof testsIn>[number]['limit'] }): number =>
  limit === null || limit.bound === 'right' ? 0 : limit.value;
