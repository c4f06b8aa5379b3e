import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { inkLooks } from '#drawing/ink.ts';
import { inksOf, signs } from '#drawing/plan/sheet/legend.ts';
import { sheetSymbol } from '#drawing/plan/sheet/sheet-symbol.ts';
import type { Scene, Shape } from '#drawing/scene.ts';
import { type SymbolName, symbolWords } from '#drawing/symbols.ts';
import { cornerDistances } from '#engine/plan/corners.ts';
import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import { papersOf } from '#exports/papers.ts';
import { planFiles, planScenes } from '#exports/plan-files.ts';
import type { Job } from '#model/job.ts';
import { demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';

type Text = Extract<Shape, { kind: 'text' }>;

const papersFor = (job: Job, schemeId: string) => {
  const papers = papersOf(job, demoLibrary(), { date: '2026-11-27', revision: 1, schemeId });
  if (papers === null) throw new Error('no papers');
  return papers;
};

const textsOf = (shapes: readonly Shape[]): readonly Text[] =>
  shapes.flatMap((shape) =>
    shape.kind === 'group' ? textsOf(shape.shapes) : shape.kind === 'text' ? [shape] : [],
  );
const layersOf = (scene: Scene, isWords: boolean): readonly Shape[] =>
  scene.layers
    .filter(({ name }) => name !== 'sheet' && (name === 'words') === isWords)
    .flatMap(({ shapes }) => shapes);
const said = (scene: Scene): string =>
  textsOf(layersOf(scene, true))
    .map(({ text }) => text)
    .join(' ');

/** What the legend says: what stands between its heading and the next, on whichever sheet. */
function legendOf(scenes: readonly Scene[]): string {
  let isLegend = false;
  const rows = scenes.flatMap((scene) => {
    isLegend = false;
    return textsOf(layersOf(scene, true)).filter(({ text, ink, strong }) => {
      if (strong && ink === 'text-soft') isLegend = text.startsWith('Legend');
      return isLegend;
    });
  });
  return rows.map(({ text }) => text).join(' ');
}

const cases = demoNames.flatMap((name) => demoJob(name).schemes.map(({ id }) => [name, id] as const));

describe.each(cases)('the sheets of %s, %s', (name, id) => {
  const papers = papersFor(demoJob(name), id);
  const all = [planScenes(papers), planScenes(papers, 'A4'), planScenes(papers, 'A3')].flat();

  it('explain every sign that is drawn on them, and no other', () => {
    all.forEach((scene, i) => {
      if (scene.scale === null) return;
      // A legend that has no room beside its plan is on the lists after it.
      const after = all.slice(i + 1);
      const next = after.findIndex(({ scale }) => scale !== null);
      const legend = legendOf([scene, ...after.slice(0, next < 0 ? after.length : next)]);
      expect(legend).toContain('Legend');
      const inks = inksOf(layersOf(scene, false));
      for (const [ink, { meaning }] of signs)
        expect([meaning, legend.includes(meaning)]).toEqual([meaning, inks.has(ink)]);
    });
  });

  it('are lettered and drawn in the series: letters of 2.5, 3.5 and 5 mm', () => {
    const sizes = new Set(
      all
        .flatMap((scene) => scene.layers.flatMap(({ shapes }) => textsOf(shapes)))
        .map(({ sizeMm }) => sizeMm),
    );
    expect([...sizes].filter((size) => ![2.5, 3.5, 5].includes(size))).toEqual([]);
  });

  it('give height and both corners of every new point on a wall, and number every sheet', () => {
    const sheets = planScenes(papers);
    const words = sheets.map(said).join(' ');
    for (const { id: pointId, label, status } of papers.shown.worked.job.points) {
      const position = papers.shown.worked.plan.positionOfPoint.get(pointId);
      if (status !== 'wanted' || position === undefined) continue;
      const drawn = sheets.flatMap((scene) => textsOf(layersOf(scene, false))).map(({ text }) => text);
      expect(drawn).toContain(`${label} h ${Math.round(position.heightMm)}`);
      expect(words).toContain(`${label}: `);
      if (position.onWall === undefined) continue;
      const { leftMm, rightMm } = cornerDistances(papers.shown.worked.plan, position.onWall);
      if (leftMm !== null) expect(words).toContain(`${Math.round(leftMm)} from the left-hand corner`);
      if (rightMm !== null) expect(words).toContain(`${Math.round(rightMm)} from the right-hand corner`);
    }
    sheets.forEach((scene, i) => {
      expect(said(scene)).toContain(`Sheet ${i + 1} of ${sheets.length}`);
    });
  });
});

describe('what is new, found and taken out', () => {
  it('is told apart without colour: by width or dashes of a cable', () => {
    const look = (ink: 'found' | 'found-assumed' | 'new' | 'removed') => {
      const { widthMm = 0, dashMm = [] } = inkLooks[ink];
      return { widthMm, dash: dashMm.join(' ') };
    };
    expect(look('new').widthMm / look('found').widthMm).toBeGreaterThanOrEqual(Math.SQRT2);
    expect(new Set(['found', 'found-assumed', 'removed'].map((ink) => look(ink as 'found').dash)).size).toBe(
      3,
    );
  });

  it('and by a ring round a new symbol and a cross over one that goes, whatever the symbol', () => {
    const place = { at: sheetPoint(50, 50), into: [0, -1] as const };
    for (const symbol of Object.keys(symbolWords) as SymbolName[])
      for (const state of ['found', 'new', 'removed'] as const) {
        const inks = inksOf(sheetSymbol(symbol, place, state));
        expect([symbol, state, inks.has('ring-new'), inks.has('cross-removed')]).toEqual([
          symbol,
          state,
          state === 'new',
          state === 'removed',
        ]);
      }
  });

  it('and parts a new cable from the dark wall that it lies on by a strip of paper on both its sides', () => {
    const width = (ink: 'halo-new' | 'new') => inkLooks[ink].widthMm ?? 0;
    expect((width('halo-new') - width('new')) / 2).toBeGreaterThanOrEqual(0.25);
  });

  it('has lines in the series of √2', () => {
    const series = [0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4];
    for (const [ink, { stroke, widthMm }] of Object.entries(inkLooks))
      if (stroke !== undefined) expect([ink, series.includes(widthMm ?? 0.25)]).toEqual([ink, true]);
  });
});

describe('hostile words', () => {
  it('stay within their sheet: a word without an end, a title of many lines', () => {
    const job = produce(demoJob('quarrel-court'), (draft) => {
      draft.title = 'Endless '.repeat(200);
      for (const point of draft.points) if (point.status === 'wanted') point.label = 'W'.repeat(200);
    });
    const papers = papersFor(job, job.schemes[0]?.id ?? '');
    for (const scene of planScenes(papers)) {
      const rows = textsOf(layersOf(scene, true)).filter(({ anchor }) => anchor === 'start');
      expect(rows.length).toBeGreaterThan(10);
      // By the widest of the faces that rows are laid out for, a tenth over: see the columns.
      const wide = rows.filter(
        ({ at, text, sizeMm }) => at[0] + text.length * sizeMm * 0.56 * 0.91 > scene.widthMm - 10,
      );
      expect(wide.map(({ text }) => text)).toEqual([]);
    }
    expect(planFiles(papers)[0]?.svg()).toContain('<svg');
  });
});
