import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { testSheet } from '#engine/work/tests/test-sheet.ts';
import { papersOf } from '#exports/papers.ts';
import { recordJson } from '#exports/work/record-json.ts';
import { recordOf } from '#exports/work/record-of.ts';
import { recordPdf } from '#exports/work/record-pdf.ts';
import type { Job } from '#model/job.ts';
import { demoEstimate, demoJob, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { allFields } from '#tests/engine/work/record/record-fixtures.ts';
import { readingsFor } from '#tests/engine/work/tests/filled.ts';
import { newJob } from '../../ui/edits/new-job.ts';
import { readPdf } from './pdf-reader.ts';
import { recordSchema } from './record-schema.ts';

const library = demoLibrary();
const A4_PT = { width: 595.28, height: 841.89 };
const flat = (text: string): string => text.replaceAll(/\s+/g, ' ');

function requestOf(job: Job, schemeId: string | null) {
  const papers = papersOf(job, library, { date: '2026-11-27', revision: 1, schemeId });
  if (papers === null) throw new Error(`no scheme ${schemeId}`);
  return { papers, library };
}

/** The words of a PDF in order, a space between: a table cell's words come together whatever its lines. */
const spoken = (text: string): string => flat(text).replaceAll('\u00a0', ' ');

describe.each([
  ['saltglass-row', 'spurs-rcbo', 'Record for a minor works certificate'],
  ['saltglass-row-quoting', 'new-radial', 'Record for an installation certificate'],
  ['fernlow-close', 'fused-unit', 'Record for a minor works certificate'],
  ['quarrel-court', 'heater-w2b', 'Record for a minor works certificate'],
] as const)('the record of %s, %s', (name, schemeId, title) => {
  const job = demoJob(name);
  const request = requestOf(job, schemeId);

  it('is on A4 with every item, nothing off its pages, and says that it is no certificate', async () => {
    const bytes = await recordPdf(request);
    const pdf = await readPdf(bytes);
    const text = spoken(pdf.pages.join(' '));
    expect(text).toContain(title);
    expect(text).toContain('This is no certificate.');
    expect(text).toContain('Nothing has been read after the work yet.');
    const record = recordOf(request);
    for (const { name: circuit, described } of record.circuits) {
      expect(text).toContain(`Circuit: ${circuit}`);
      for (const words of described) expect(text).toContain(spoken(words));
    }
    const words = new Set(pdf.words.flat().map((word) => word.text));
    for (const { label, value } of allFields(record))
      for (const word of spoken(`${label} ${value ?? ''}`)
        .trim()
        .split(' '))
        expect(words).toContain(word);
    for (const word of pdf.words.flat()) {
      expect(word.xMin, word.text).toBeGreaterThan(40);
      expect(word.xMax, word.text).toBeLessThan(A4_PT.width - 40);
      expect(word.yMax, word.text).toBeLessThan(A4_PT.height);
    }
    expect(pdf.fonts.every(({ embedded, unicode }) => embedded && unicode)).toBe(true);
    expect(pdf.images).toBe(0);
    expect(Buffer.from(await recordPdf(request)).equals(Buffer.from(bytes))).toBe(true);
  });

  it('is data that other programs can count on', () => {
    const json = recordJson(request);
    const read = recordSchema.safeParse(JSON.parse(json));
    expect(read.error?.issues ?? []).toEqual([]);
    expect(recordJson(request)).toBe(json);
  });
});

describe('the record once it was tested', () => {
  const scheme = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');
  const readings = readingsFor(testSheet(scheme), (test) =>
    test.group === 'zs' ? 3.21 : test.group === 'rcd' ? 27 : null,
  );
  const job = { ...demoJob('saltglass-row'), readings: [...demoJob('saltglass-row').readings, ...readings] };
  const request = requestOf(job, 'spurs-rcbo');

  it('prints what was measured and what is beyond its limit', async () => {
    const text = spoken((await readPdf(await recordPdf(request))).pages.join(' '));
    expect(text).toContain('3.21 Ω');
    expect(text).toContain('27 ms');
    expect(text).toContain('Beyond the limit, or wrong.');
    expect(text).toContain('The last reading after the work is of 27 November 2026.');
    expect(recordSchema.safeParse(JSON.parse(recordJson(request))).success).toBe(true);
  });
});

describe('the record of a job that is hardly begun', () => {
  const terms = { labour: 'typical', vat: 'standard' } as const;
  const empty = { storeys: [], points: [], legs: [], readings: [], schemes: [], circuits: [], boards: [] };

  const begun: readonly (readonly [string, Job])[] = [
    ['new', newJob({ reference: 'N-1', title: 'New', terms })],
    ['without anything', { ...demoJob('saltglass-row'), ...empty, answers: [] }],
    ['without a scheme', { ...demoJob('saltglass-row'), schemes: [] }],
  ];

  it.each(begun)('is there, %s: nothing to certify, and room to write', async (_, job) => {
    const request = requestOf(job, null);
    const text = spoken((await readPdf(await recordPdf(request))).pages.join(' '));
    expect(text).toContain('there is nothing to certify');
    expect(recordSchema.safeParse(JSON.parse(recordJson(request))).error?.issues ?? []).toEqual([]);
  });
});
