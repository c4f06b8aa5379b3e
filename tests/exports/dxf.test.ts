import DxfParser from 'dxf-parser';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { storeysOf } from '#drawing/plan/cable-shapes.ts';
import { storeysToDraw } from '#drawing/plan/storeys-to-draw.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { asciiWords } from '#exports/dxf/ascii-words.ts';
import { papersOf } from '#exports/papers.ts';
import { planFiles } from '#exports/plan-files.ts';
import type { Job } from '#model/job.ts';
import { demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { printedByDrafting } from './drafting-program.ts';
import { readPdf } from './pdf-reader.ts';

interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly z?: number;
}

/** As much as is read here of what dxf-parser, which is not ours, makes of a file. */
interface ReadDxf {
  readonly header: Readonly<Record<string, unknown>>;
  readonly tables: {
    readonly layer: {
      readonly layers: Readonly<Record<string, { readonly frozen: boolean }>>;
    };
  };
  readonly entities: readonly {
    readonly type: string;
    readonly layer: string;
    readonly vertices?: readonly Vertex[];
    readonly text?: string;
    readonly center?: Vertex;
    readonly radius?: number;
  }[];
}

function read(dxf: string): ReadDxf {
  const parsed = new DxfParser().parseSync(dxf);
  if (parsed === null) throw new Error('The file could not be read.');
  return parsed as unknown as ReadDxf;
}

/** The drawings of a job's scheme, storey by storey, as read back. */
function drawn(job: Job, schemeId: string | null = null) {
  const papers = papersOf(job, demoLibrary(), { date: '2026-11-27', revision: 1, schemeId });
  if (papers === null) throw new Error('no papers');
  const files = planFiles(papers).map((plan) => ({ ...plan, text: plan.dxf() }));
  return { shown: papers.shown, files: files.map((file) => ({ ...file, dxf: read(file.text) })) };
}

const lengthMm = (vertices: readonly Vertex[]): number =>
  vertices.reduce((sum, to, i) => {
    const from = vertices[i - 1];
    if (from === undefined) return sum;
    return sum + Math.hypot(to.x - from.x, to.y - from.y, (to.z ?? 0) - (from.z ?? 0));
  }, 0);

const onLayer = ({ entities }: ReadDxf, layer: string) => entities.filter((one) => one.layer === layer);
const lengthsOn = (dxf: ReadDxf, layer: string): readonly number[] =>
  onLayer(dxf, layer)
    .map(({ vertices = [] }) => Math.round(lengthMm(vertices)))
    .toSorted((a, b) => a - b);

/** The ways of the new cables that show on a storey, by the estimate, mm. */
const waysOf = ({ runs }: SchemeEstimate, storeyId: string): readonly number[] =>
  runs
    .filter((run) => run.segments.length > 0 && storeysOf(run).has(storeyId))
    .map(({ routeMm }) => Math.round(routeMm))
    .toSorted((a, b) => a - b);

describe.each(demoNames)('the plans of %s for drafting programs', (name) => {
  const job = demoJob(name);

  it.each(job.schemes.map(({ id }) => id))('%s: new cables are as long as in the estimate', (schemeId) => {
    const { shown, files } = drawn(job, schemeId);
    for (const { storeyId, dxf } of files) {
      expect(lengthsOn(dxf, 'CABLES-NEW-3D')).toEqual(waysOf(shown, storeyId));
      const holes = shown.runs
        .filter((run) => storeysOf(run).has(storeyId))
        .flatMap(({ cuts }) => cuts.flatMap((cut) => cut.holes));
      expect(onLayer(dxf, 'JOIST-HOLES')).toHaveLength(holes.length);
    }
    expect(files.flatMap(({ storeyId }) => waysOf(shown, storeyId)).length).toBeGreaterThan(0);
  });

  it('are in millimetres, a known layer for each thing, in ASCII, and alike for equal jobs', () => {
    const { files } = drawn(job);
    for (const [i, { dxf, text }] of files.entries()) {
      expect(dxf.header.$INSUNITS).toBe(4);
      const layers = dxf.tables.layer.layers;
      expect(
        [...new Set(dxf.entities.map(({ layer }) => layer))].filter((layer) => !(layer in layers)),
      ).toEqual([]);
      expect(Object.keys(layers).filter((layer) => layers[layer]?.frozen)).toEqual([
        'CABLES-FOUND-3D',
        'CABLES-REMOVED-3D',
        'CABLES-NEW-3D',
      ]);
      expect(text).toMatch(/^[\x20-\x7e\r\n]+$/);
      expect(text).not.toMatch(/NaN|Infinity/);
      expect(drawn(job).files[i]?.text).toBe(text);
    }
  });

  it('has each wall where the house has it, and every point of the storey by name', () => {
    const { shown, files } = drawn(job);
    for (const { storeyId, dxf } of files) {
      const texts = onLayer(dxf, 'POINT-LABELS').map(({ text = '' }) => text.split(' ')[0]);
      const here = job.points.filter(
        ({ id, kind }) =>
          kind !== 'joint' && shown.worked.plan.positionOfPoint.get(id)?.storeyId === storeyId,
      );
      expect(here.map(({ label }) => asciiWords(label)).filter((label) => !texts.includes(label))).toEqual(
        [],
      );
      const xs = onLayer(dxf, 'WALLS').flatMap(({ vertices = [] }) => vertices.map(({ x }) => x));
      const walls = shown.worked.plan.storeyById.get(storeyId)?.storey.walls ?? [];
      // Half a wall's thickness to either side of its line, across it.
      const outer = walls.flatMap(({ from, to, thicknessMm }) => {
        const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
        const asideMm = (Math.abs(dy) / Math.hypot(dx, dy)) * (thicknessMm / 2);
        return [from[0], to[0]].flatMap((x) => [x - asideMm, x + asideMm]);
      });
      expect(Math.min(...xs)).toBeCloseTo(Math.min(...outer), 3);
      expect(Math.max(...xs)).toBeCloseTo(Math.max(...outer), 3);
    }
  });
});

describe('a drawing for drafting programs', () => {
  it('keeps words of any kind on one line, in letters that every program has', () => {
    expect(asciiWords('2.5/1.5 mm² – “Tŷ Glas” ≤ 0.55 Ω, 30 °C')).toBe(
      '2.5/1.5 mm2 - "Ty Glas" <= 0.55 ohm, 30 deg C',
    );
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (words) => {
        expect(asciiWords(words)).toMatch(/^[\x20-\x7e]*$/);
        expect(asciiWords(words)).not.toContain('%%');
      }),
      { seed: 20_261_127 },
    );
  });

  it('is not led astray by names that look like its own codes', () => {
    const job = demoJob('saltglass-row');
    const hostile = { ...job, title: '0\nEOF\n%%c^M 0\r\nSECTION', reference: 'A\u2028B' };
    const { files } = drawn(hostile);
    const plain = drawn(job).files;
    expect(files.map(({ dxf }) => dxf.entities.length)).toEqual(plain.map(({ dxf }) => dxf.entities.length));
    const titles = onLayer(files[0]?.dxf ?? read(''), 'NOTES').map(({ text }) => text);
    expect(titles).toContain('0 EOF % %c M 0 SECTION (A?B): wiring, Ground floor');
  });

  it('stands for a job of which nothing is drawn, too', () => {
    const job = demoJob('saltglass-row');
    const bare = {
      ...job,
      storeys: [],
      points: [],
      legs: [],
      schemes: [],
      circuits: [],
      boards: [],
      readings: [],
      photos: [],
    };
    const { files, shown } = drawn(bare as Job);
    expect(storeysToDraw(shown)).toHaveLength(1);
    expect(onLayer(files[0]?.dxf ?? read(''), 'NOTES').length).toBeGreaterThan(4);
    expect(onLayer(files[0]?.dxf ?? read(''), 'WALLS')).toEqual([]);
  });

  it('is drawn by a program that is not ours', async () => {
    const [ground] = drawn(demoJob('saltglass-row')).files;
    const { pages, images } = await readPdf(await printedByDrafting(ground?.text ?? ''));
    // Its letters are strokes: there is a page, in vectors, and no picture of dots.
    expect([pages.length, images]).toEqual([1, 0]);
  }, 180_000);
});
