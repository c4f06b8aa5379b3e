import { type Draft, produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { entered } from '#engine/work/tests/answering-reading.ts';
import { measuredProofs } from '#engine/work/tests/measured-proof.ts';
import type { SheetTest } from '#engine/work/tests/sheet-test.ts';
import { testSheet } from '#engine/work/tests/test-sheet.ts';
import type { Job } from '#model/job.ts';
import { demoJob, estimateOf, schemeOf } from '../../demo-jobs/demo-estimates.ts';
import { asExpected, readingsFor, testsIn, withReadings } from './filled.ts';

/** The terrace's first scheme after a change of its job. */
const terrace = (change: (job: Draft<Job>) => void): SchemeEstimate =>
  schemeOf(estimateOf(produce(demoJob('saltglass-row'), change)), 'spurs-rcbo');

const testsOf = (scheme: SchemeEstimate, ...groups: readonly string[]): readonly SheetTest[] =>
  testsIn(testSheet(scheme)).filter(({ group }) => groups.includes(group));

/** How the one test of an id comes out with a figure. */
function verdict(scheme: SchemeEstimate, id: string, value: number | boolean): string | undefined {
  const test = testsIn(testSheet(scheme)).find((each) => each.id === id);
  if (test === undefined) throw new Error(`no test ${id}`);
  const reading = entered(test, { id: 'one', value, takenOn: '2026-11-27', testV: 500 });
  const after = testSheet({ worked: withReadings(scheme.worked, [reading]), proof: scheme.proof });
  return testsIn(after).find((each) => each.id === id)?.verdict;
}

const asIs = terrace(() => undefined);
const board = asIs.worked.job.boards[0]?.id ?? '';

describe('the supply once more after the work', () => {
  it('is polarity, loop and fault current at the board, live, before every loop of a circuit', () => {
    const { parts } = testSheet(asIs);
    const at = parts.findIndex(({ group }) => group === 'supply');
    expect(parts[at]).toMatchObject({ isLive: true, circuitId: null });
    expect(parts[at]?.tests.map(({ id }) => id)).toEqual(
      ['polarity', 'loop', 'fault-current'].map((what) => `${board}/supply/${what}`),
    );
    expect(parts.findIndex(({ group }) => group === 'zs')).toBeGreaterThan(at);
  });

  it('has the band of what the survey had: Ze by itself, or Zs at the board', () => {
    const known = (facts: Partial<Job['supply']>, zdbOhm?: number) =>
      terrace((job) => {
        Object.assign(job.supply, facts);
        job.readings = [];
        const [first] = job.boards;
        if (first !== undefined && zdbOhm !== undefined) first.zdbOhm = zdbOhm;
      });
    const loop = `${board}/supply/loop`;
    const ze = known({ zeOhm: 0.21 });
    expect(testsOf(ze, 'supply')[1]).toMatchObject({ mark: 'Ze', asked: { kind: 'ze' } });
    expect(verdict(ze, loop, 0.26)).toBe('fits');
    expect(verdict(ze, loop, 0.27)).toBe('look');
    expect(verdict(ze, loop, 0.15)).toBe('look');
    const zdb = known({ zeOhm: 0.21 }, 0.3);
    expect(testsOf(zdb, 'supply')[1]).toMatchObject({ mark: 'Zs at the board', asked: { kind: 'zs' } });
    expect(verdict(zdb, loop, 0.35)).toBe('fits');
    expect(verdict(zdb, loop, 0.36)).toBe('look');
    expect(verdict(known({ zeOhm: undefined }), loop, 4)).toBe('read');
  });

  it('turns a fault current into the loop that lets it flow: 230 V ÷ 1 kA is 0.23 Ω', () => {
    // Ohm’s law; 16 kA is what a consumer unit bears as a whole (BS EN 61439-3, from memory).
    const of = (pfcKA: number | undefined) =>
      terrace((job) => {
        job.readings = [];
        if (pfcKA === undefined) delete job.supply.pfcKA;
        else job.supply.pfcKA = pfcKA;
      });
    const id = `${board}/supply/fault-current`;
    expect(testsOf(of(1), 'supply')[2]?.expected?.toOhm).toBeCloseTo(0.23, 9);
    // 0.28 Ω lets 0.8214 kA flow, 0.18 Ω 1.2778 kA.
    expect(verdict(of(1), id, 0.822)).toBe('fits');
    expect(verdict(of(1), id, 0.821)).toBe('look');
    expect(verdict(of(1), id, 1.277)).toBe('fits');
    expect(verdict(of(1), id, 1.279)).toBe('look');
    expect(verdict(of(undefined), id, 16)).toBe('fits');
    expect(verdict(of(undefined), id, 16.1)).toBe('fails');
    expect(verdict(of(undefined), id, 0)).toBe('fits');
  });

  it('is what the loops of the points are reckoned with, once it is read', () => {
    const sheet = testSheet(asIs);
    const readings = readingsFor(sheet, (test) =>
      test.asked.kind === 'ze' || test.id.endsWith('supply/loop') ? 0.5 : asExpected(test),
    );
    const worked = withReadings(asIs.worked, readings);
    const { limits } = demoLibrary();
    const [circuit] = measuredProofs({
      worked,
      proof: asIs.proof,
      limits,
      sheet: testSheet({ worked, proof: asIs.proof }),
    });
    for (const { zsReckonedOhm, r1r2Ohm } of circuit?.points ?? [])
      expect(zsReckonedOhm).toBeCloseTo(0.5 + (r1r2Ohm ?? 0), 9);
    expect(circuit?.points.length).toBeGreaterThan(5);
  });

  it('is found again where nobody said at which place Ze and the fault current were read', () => {
    const loose = { phase: 'after', id: 'ze', kind: 'ze', ohm: 0.2 } as const;
    const current = { phase: 'after', id: 'pfc', kind: 'pfc', kA: 1.1 } as const;
    const scheme = terrace((job) => {
      job.readings = [loose, current];
      for (const each of job.boards) delete each.zdbOhm;
    });
    expect(testsOf(scheme, 'supply').map(({ reading }) => reading?.id)).toEqual([undefined, 'ze', 'pfc']);
  });
});

describe('an RCD', () => {
  const circuit = asIs.proof[0]?.circuit ?? '';

  it('of type S opens no sooner than 130 ms and no later than 500 ms, and is no additional protection', () => {
    // Times of BS EN 61008 for type S (from memory).
    const scheme = schemeOf(
      estimateOf(
        produce(demoJob('saltglass-row'), (job) => {
          const found = job.circuits.find(({ id }) => id === circuit);
          if (found?.device !== undefined)
            found.device = {
              ...found.device,
              standard: 'BS-EN-61009',
              rcd: { type: 'A', mA: 30, delayed: true },
            };
        }),
      ),
      'off-spur-1',
    );
    const id = `${circuit}/rcd/rcd`;
    expect(verdict(scheme, id, 129)).toBe('fails');
    expect(verdict(scheme, id, 130)).toBe('fits');
    expect(verdict(scheme, id, 500)).toBe('fits');
    expect(verdict(scheme, id, 501)).toBe('fails');
    const rcd = scheme.findings.find(({ rule }) => rule === 'RC1');
    expect(rcd?.outcome).not.toBe('passes');
  });

  it('of an outlet is tested at the outlet, held to 200 ms, and answers for no other', () => {
    // 200 ms as handbooks of testing had it for BS 7288 (from memory); the circuit’s own RCD has 300.
    const scheme = terrace((job) => {
      for (const point of job.points) if (point.id === 'w1-living1') point.features.push('rcd');
    });
    const own = testsOf(scheme, 'rcd', 'rcd-button').filter(({ subject }) => subject === 'w1-living1');
    expect(own.map(({ group, at }) => [group, at])).toEqual([
      ['rcd', 'w1-living1'],
      ['rcd-button', 'w1-living1'],
    ]);
    expect(verdict(scheme, `${circuit}/rcd/w1-living1`, 200)).toBe('fits');
    expect(verdict(scheme, `${circuit}/rcd/w1-living1`, 201)).toBe('fails');
    expect(verdict(scheme, `${circuit}/rcd/rcd`, 201)).toBe('fits');
    const readings = readingsFor(testSheet(scheme), (test) =>
      test.subject === 'w1-living1' ? asExpected(test) : null,
    );
    const after = testSheet({ worked: withReadings(scheme.worked, readings), proof: scheme.proof });
    expect(testsIn(after).find(({ id }) => id === `${circuit}/rcd/rcd`)?.reading).toBeNull();
    expect(testsIn(after).find(({ id }) => id === `${circuit}/rcd/w1-living1`)?.reading).not.toBeNull();
  });
});

describe('surge and arc fault devices', () => {
  const answered = (question: string, value: string, certainty: 'seen' | 'unknown' = 'seen') =>
    terrace((job) => {
      job.answers = [
        ...job.answers.filter((each) => each.question !== question),
        { question, value, certainty },
      ];
    });

  it('are tested where the survey has one, and nowhere else', () => {
    expect(testsOf(answered('surge-protection', 'fitted'), 'spd-indicator').map(({ at }) => at)).toEqual([
      board,
    ]);
    expect(testsOf(answered('surge-protection', 'fitted', 'unknown'), 'spd-indicator')).toEqual([]);
    expect(testsOf(answered('surge-protection', 'declined'), 'spd-indicator')).toEqual([]);
    expect(testsOf(answered('surge-protection', 'wanted'), 'spd-indicator')).toEqual([]);
    expect(testsOf(answered('arc-fault-protection', 'fitted'), 'afdd-button')).toHaveLength(1);
    expect(testsOf(answered('arc-fault-protection', 'not-fitted'), 'afdd-button')).toEqual([]);
  });

  it('are tested where the scheme brings one with a new board', () => {
    const scheme = terrace((job) => {
      job.answers = [{ question: 'surge-protection', value: 'wanted', certainty: 'seen' }];
      for (const each of job.schemes)
        if (each.id === 'spurs-rcbo') each.remedies = [{ kind: 'new-board', at: board }];
    });
    expect(testsOf(scheme, 'spd-indicator').map(({ subject }) => subject)).toEqual([board]);
  });

  it('fail where the indicator shows a spent one, or the button opens nothing', () => {
    const surge = answered('surge-protection', 'fitted');
    expect(verdict(surge, `${board}/spd-indicator/shows`, true)).toBe('fits');
    expect(verdict(surge, `${board}/spd-indicator/shows`, false)).toBe('fails');
    const arc = answered('arc-fault-protection', 'fitted');
    const id = testsOf(arc, 'afdd-button')[0]?.id ?? '';
    expect(verdict(arc, id, true)).toBe('fits');
    expect(verdict(arc, id, false)).toBe('fails');
  });
});
