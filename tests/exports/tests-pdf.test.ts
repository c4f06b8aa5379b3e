import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { asFoundTests } from '#drawing/work/as-found-words.ts';
import { limitSaid } from '#drawing/work/test-sheet-words.ts';
import { testSheet } from '#engine/work/tests/test-sheet.ts';
import { papersOf } from '#exports/papers.ts';
import { workPaperPdf } from '#exports/work/work-paper.ts';
import { workPaper } from '#exports/work/work-papers.ts';
import type { Reading } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { demoEstimate, demoJob, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { asExpected, readingsFor } from '#tests/engine/work/tests/filled.ts';
import { readPdf } from './pdf-reader.ts';

const library = demoLibrary();
const A4_PT = { width: 595.28, height: 841.89 };

function sheetOf(job: Job, schemeId: string): Promise<Uint8Array> {
  const papers = papersOf(job, library, { date: '2026-11-27', revision: 1, schemeId });
  if (papers === null) throw new Error(`no scheme ${schemeId}`);
  const of = { papers, library };
  return workPaperPdf(workPaper('test-sheet.pdf', of), of);
}
const withAfter = (job: Job, readings: readonly Reading[]): Job => ({
  ...job,
  readings: [...job.readings, ...readings],
});
const flat = (text: string): string => text.replaceAll(/\s+/g, ' ');

describe.each([
  ['saltglass-row', 'spurs-rcbo'],
  ['saltglass-row-quoting', 'new-radial'],
  ['fernlow-close', 'fused-unit'],
  ['quarrel-court', 'heater-w2b'],
] as const)('the test sheet of %s, %s, on paper', (name, schemeId) => {
  const job = demoJob(name);
  const sheet = testSheet(schemeOf(demoEstimate(name), schemeId));

  it('has every test with what it is held to, room for the reading, and nothing off its pages', async () => {
    const pdf = await readPdf(await sheetOf(job, schemeId));
    const text = flat(pdf.pages.join(' '));
    expect(text).toContain('Test sheet');
    expect(text).toContain(job.reference);
    expect(text).toContain('Instruments, with their serial numbers');
    for (const { circuitName, rows } of asFoundTests(schemeOf(demoEstimate(name), schemeId).worked)) {
      expect(text).toContain(`As found, before the work, dead: ${circuitName}`);
      for (const { what, read } of rows) {
        expect(text).toContain(flat(what));
        expect(text).toContain(flat(read));
      }
    }
    for (const { connect, tests } of sheet.parts) {
      for (const step of connect) expect(text).toContain(flat(step));
      for (const test of tests) expect(text).toContain(flat(limitSaid(test)));
    }
    const marks = text.split(' ');
    for (const { mark, subject, circuit } of sheet.parts.flatMap(({ tests }) => tests))
      if (subject !== circuit && !mark.includes(' ')) expect(marks).toContain(mark);
    expect(text).not.toContain('With what was measured');
    for (const word of pdf.words.flat()) {
      expect(word.xMin, word.text).toBeGreaterThan(40);
      expect(word.xMax, word.text).toBeLessThan(A4_PT.width - 40);
      expect(word.yMax, word.text).toBeLessThan(A4_PT.height);
    }
    expect(pdf.fonts.every(({ embedded, unicode }) => embedded && unicode)).toBe(true);
    expect(pdf.images).toBe(0);
  });

  it('filled, has what was read, the checks with it and the picture; the same twice', async () => {
    const readings = readingsFor(sheet, (test) =>
      test.group === 'zs' ? 9 : test.group === 'polarity' ? false : asExpected(test),
    );
    const bytes = await sheetOf(withAfter(job, readings), schemeId);
    const pdf = await readPdf(bytes);
    const text = flat(pdf.pages.join(' '));
    expect(text).toContain('With what was measured');
    expect(text).toContain('Disconnects in a fault to earth: fails.');
    expect(text).toContain('Polarity: fails.');
    const isExpected = sheet.parts.some(({ tests }) =>
      tests.some((test) => test.unit === 'Ω' && test.expected !== null),
    );
    expect(text.includes('Expected against measured')).toBe(isExpected);
    const isOff = sheet.parts.some(
      ({ group, tests }) => group === 'zs' && tests.some((test) => test.expected !== null),
    );
    expect(text.includes('What contradicts the drawing')).toBe(isOff);
    expect(text).toMatch(/\d+ of \d+ read/);
    for (const word of pdf.words.flat()) expect(word.xMax, word.text).toBeLessThan(A4_PT.width - 40);
    for (const page of pdf.words)
      expect(Math.max(...page.map(({ yMax }) => yMax))).toBeLessThan(A4_PT.height - 5);
    const again = await sheetOf(withAfter(job, readings), schemeId);
    expect(Buffer.from(again).equals(Buffer.from(bytes))).toBe(true);
  });
});

describe('what was tested with', () => {
  it('is printed, with what could not be tested to its last line; what nobody said is left for hand', async () => {
    const lines = Array.from(
      { length: 90 },
      (_, i) => `Point ${i + 1}: behind furniture that could not be moved.`,
    );
    const testing = {
      instruments: [{ id: 'i1', what: 'Multifunction tester', serial: 'A-4711' }],
      notTested: lines.join('\n'),
    };
    const { pages, words } = await readPdf(
      await sheetOf({ ...demoJob('saltglass-row'), testing }, 'spurs-rcbo'),
    );
    const text = flat(pages.join(' '));
    expect(text).toContain('Multifunction tester, serial number A-4711');
    for (const line of lines) expect(text).toContain(line);
    for (const page of words)
      expect(Math.max(...page.map(({ yMax }) => yMax))).toBeLessThan(A4_PT.height - 5);
    expect(text).toMatch(/Who tested .* Tested by Day/);
    expect(text.match(/What could not be tested, and why/g)).toHaveLength(1);
  });
});

describe('the test sheet of a job with nothing to test', () => {
  it('says so', async () => {
    const job = demoJob('saltglass-row');
    const bare = {
      ...job,
      schemes: [{ id: 'none', name: 'Nothing', connections: [], remedies: [], locks: [] }],
    };
    const { pages } = await readPdf(await sheetOf(bare, 'none'));
    expect(flat(pages.join(' '))).toContain('there is nothing to test');
  });
});
