import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { inkLooks } from '#drawing/ink.ts';
import { type Scene, words } from '#drawing/scene.ts';
import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import { papersOf } from '#exports/papers.ts';
import { sheetsPdf } from '#exports/plan/plan-pdf.ts';
import { planPdf, planScenes } from '#exports/plan-files.ts';

import { demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { newJob } from '../../ui/edits/new-job.ts';
import { readPdf } from './pdf-reader.ts';

const day = { date: '2026-11-27', revision: 1, schemeId: null };

function papersFor(job: Parameters<typeof papersOf>[0]) {
  const papers = papersOf(job, demoLibrary(), day);
  if (papers === null) throw new Error('no papers');
  return papers;
}

const sceneOf = (text: string): Scene => ({
  title: 'A sheet',
  widthMm: 210,
  heightMm: 297,
  scale: null,
  layers: [{ name: 'words', shapes: [words('text', sheetPoint(20, 20), text)] }],
});

describe.each(demoNames)('the plans of %s as PDF', (name) => {
  const papers = papersFor(demoJob(name));

  it('are a page a sheet, with letters as letters in embedded faces, and nothing as dots', async () => {
    const bytes = await planPdf(papers);
    const pdf = await readPdf(bytes);
    const { storeys } = papers.shown.worked.plan;
    const sheets = planScenes(papers);
    expect(pdf.pages).toHaveLength(sheets.length);
    const plans = sheets.flatMap(({ scale }, i) => (scale === null ? [] : [i]));
    expect(plans).toHaveLength(storeys.length);
    expect(pdf.images).toBe(0);
    expect(pdf.fonts.length).toBeGreaterThan(0);
    expect(pdf.fonts.filter(({ embedded, unicode }) => !embedded || !unicode)).toEqual([]);
    expect(pdf.info.Tagged).toBe('yes');
    expect(pdf.info.Title).toContain('wiring plan');
    const said = pdf.words.map((page) => page.map(({ text }) => text));
    for (const { id, label } of papers.shown.worked.job.points) {
      const storeyId = papers.shown.worked.plan.positionOfPoint.get(id)?.storeyId;
      const page = plans[storeys.findIndex(({ storey }) => storey.id === storeyId)] ?? -1;
      if (page >= 0 && !label.includes(' ')) expect(said[page]).toContain(label);
    }
    expect(Buffer.from(await planPdf(papers)).equals(Buffer.from(bytes))).toBe(true);
  });
});

describe('a sheet as PDF', () => {
  it('has the size of its paper, and puts a word where the scene has it', async () => {
    const pdf = await readPdf(await sheetsPdf({ title: 'T', date: '2026-11-27', sheets: [sceneOf('Here')] }));
    expect(pdf.info['Page size']).toMatch(/ \(A4\)$/);
    const [word] = pdf.words[0] ?? [];
    expect(word?.xMin).toBeCloseTo((20 * 72) / 25.4, 1);
  });

  it('keeps hostile words on one line, as words', async () => {
    const text = `A\nB\u202e\u0000 <b> ${'W'.repeat(300)}`;
    const sheets = [sceneOf(text)];
    const pdf = await readPdf(await sheetsPdf({ title: text, date: '2026-11-27', sheets }));
    expect(pdf.pages).toHaveLength(1);
    expect(pdf.words[0]?.map((word) => word.text).slice(0, 3)).toEqual(['A', 'B', '<b>']);
    expect(new Set(pdf.words[0]?.map(({ yMin }) => Math.round(yMin))).size).toBe(1);
  });

  it('says of a job in which nothing is drawn that there is nothing to draw', async () => {
    const job = newJob({ reference: 'N-1', title: 'New', terms: { labour: 'typical', vat: 'standard' } });
    const pdf = await readPdf(await planPdf(papersFor(job)));
    expect(pdf.pages).toHaveLength(1);
    expect(pdf.pages[0]).toContain('Nothing to draw yet');
  });

  it('draws nothing finer than the finest pen of the series', () => {
    for (const [ink, { stroke, widthMm }] of Object.entries(inkLooks))
      if (stroke !== undefined) expect([ink, (widthMm ?? 0) >= 0.18]).toEqual([ink, true]);
  });
});
