import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { stateTag } from '#engine/state-tag.ts';
import { estimateJson } from '#exports/estimate-json.ts';
import { packingOf } from '#exports/packing-of.ts';
import { papersOf } from '#exports/papers.ts';
import { shoppingFiles } from '#exports/shopping-files.ts';
import { shoppingOf } from '#exports/shopping-of.ts';
import type { Job } from '#model/job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';

const job = demoJob('saltglass-row');
const inCase: Job = { ...job, packFor: [{ question: 'box/r1-hallway', outcomes: ['deep', 'shallow'] }] };

function papersFor(of: Job) {
  const papers = papersOf(of, demoLibrary(), { date: '2026-11-26', revision: 1, schemeId: 'spurs-rcbo' });
  if (papers === null) throw new Error('no such scheme');
  return papers;
}

describe('what is bought in case', () => {
  it('stands in estimate.json with what goes back for each outcome that is bought for', () => {
    const papers = papersFor(inCase);
    const packing = packingOf(inCase, demoLibrary(), papers);
    const json = JSON.parse(estimateJson(papers.result, { packing }));
    expect(json.packing).toMatchObject({ schemeId: 'spurs-rcbo', extraPence: 72 });
    expect(
      json.packing.takeBack.map((one: Record<string, unknown>) => [one.question, one.outcome, one.pence]),
    ).toEqual([
      [null, null, 72],
      ['box/r1-hallway', 'shallow', 0],
    ]);
    expect(JSON.parse(estimateJson(papers.result)).packing).toBeUndefined();
  });

  it('is on the shopping list that goes out, and not where nothing is said', () => {
    const files = (of: Job) => shoppingFiles(shoppingOf(papersFor(of), demoLibrary(), of));
    const box = 'Steel back box, single, 35 mm deep';
    const rowOf = (csv: string) => csv.split('\r\n').filter((row) => row.includes(box));
    expect(rowOf(files(inCase).csv)).not.toEqual(rowOf(files(job).csv));
    expect(files(inCase).text).not.toBe(files(job).text);
  });

  it('is said to be open on the list that goes out, until it is bought for', () => {
    const files = (of: Job) => shoppingFiles(shoppingOf(papersFor(of), demoLibrary(), of));
    const open = 'Still open: 2 boxes.';
    const r1 = 'Is the back box of R1 deep enough? Not on this list:';
    expect(files(job).text).toContain(open);
    expect(files(job).text).toContain(r1);
    expect(
      files(job)
        .csv.split('\r\n')
        .filter((row) => row.startsWith('still open,')).length,
    ).toBe(2);
    expect(files(inCase).text).toContain('Still open: 1 box.');
    expect(files(inCase).text).not.toContain(r1);
  });

  it('says what having everything along would cost, which is what it costs then', () => {
    const plan = packingOf(job, demoLibrary(), papersFor(job))?.plan;
    const packFor = (plan?.questions ?? [])
      .filter(({ kind }) => kind !== 'scheme')
      .map(({ id, outcomes }) => ({ question: id, outcomes: outcomes.map((outcome) => outcome.id) }));
    const all = { ...job, packFor };
    const then = packingOf(all, demoLibrary(), papersFor(all))?.plan;
    expect(plan?.openPence).toBeGreaterThan(0);
    expect([then?.extraPence, then?.openPence]).toEqual([plan?.openPence, 0]);
  });

  it('leaves the state of the papers as it is', () => {
    expect(stateTag(inCase)).toBe(stateTag(job));
    expect(stateTag({ ...job, title: 'Another' })).not.toBe(stateTag(job));
  });

  it('is none for a job without a scheme', () => {
    const none = { ...job, schemes: [] };
    const papers = papersOf(none, demoLibrary(), { date: '2026-11-26', revision: 1, schemeId: null });
    expect(papers === null ? 'no papers' : packingOf(none, demoLibrary(), papers)).toBeNull();
  });
});
