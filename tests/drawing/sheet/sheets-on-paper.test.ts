import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { overlapMm2, type Rectangle } from '#drawing/label-placer.ts';
import { line, type Scene } from '#drawing/scene.ts';
import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { papersOf } from '#exports/papers.ts';
import { sheetsPdf } from '#exports/plan/plan-pdf.ts';
import { planScenes } from '#exports/plan-files.ts';
import type { Job } from '#model/job.ts';
import { demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { type PdfWord, readPdf } from '#tests/exports/pdf-reader.ts';
import { houseOf } from '#tests/houses/house-of.ts';
import { signsOf, strokesOf } from './symbol-strokes.ts';

const MM = 25.4 / 72;

/**
 * The room that a word's letters take, mm: a reader's box also has the face's own room above capitals and below the base line, a quarter of it
 * and a fifth. Lettering turned by a quarter is higher than wide.
 */
function lettersOf({ text, xMin, xMax, yMin, yMax }: PdfWord): Rectangle & { readonly text: string } {
  const [leftMm, rightMm, topMm, bottomMm] = [xMin * MM, xMax * MM, yMin * MM, yMax * MM];
  const [wide, high] = [rightMm - leftMm, bottomMm - topMm];
  return wide < high && text.length > 2
    ? { text, leftMm: leftMm + wide * 0.25, rightMm: rightMm - wide * 0.2, topMm, bottomMm }
    : { text, leftMm, rightMm, topMm: topMm + high * 0.25, bottomMm: bottomMm - high * 0.2 };
}

/** Every scheme's sheets as each plan asks, on A4 and on A3. */
function sheetsOf(job: Job, schemeId: string): readonly Scene[] {
  const papers = papersOf(job, demoLibrary(), { date: '2026-11-27', revision: 1, schemeId });
  if (papers === null) throw new Error('no papers');
  return [planScenes(papers), planScenes(papers, 'A4'), planScenes(papers, 'A3')].flat();
}

/** Letters keep off strokes by this much less than none: half of the finest pen, mm. */
const PEN_MM = 0.09;

const holds = ({ leftMm, rightMm, topMm, bottomMm }: Rectangle, [x, y]: SheetPoint): boolean =>
  x > leftMm + PEN_MM && x < rightMm - PEN_MM && y > topMm + PEN_MM && y < bottomMm - PEN_MM;

/** Words that lie on a sign, and signs that lie on each other; a sign's own letters belong into it. */
function signFaults(scene: Scene, words: readonly ReturnType<typeof lettersOf>[]): readonly string[] {
  const signs = signsOf(scene);
  const own = signs.flatMap(({ letters }) => letters);
  const labels = words.filter((word) => !own.some((at) => isLetterAt(word, at)));
  return signs.flatMap(({ title, strokes }) =>
    labels
      .filter((word) => strokes.some((at) => holds(word, at)))
      .map(({ text }) => `${scene.title}: ${text} on ${title}`),
  );
}

/** Whether a word is lettered about a place; base lines lie below the middle. */
const isLetterAt = ({ leftMm, rightMm, topMm, bottomMm }: Rectangle, [x, y]: SheetPoint): boolean =>
  Math.abs((leftMm + rightMm) / 2 - x) < 0.6 && y > topMm && y < bottomMm + 0.6;

/** Strokes past the edge of the paper. */
const offPaper = ({ title, widthMm, heightMm, layers }: Scene): readonly string[] =>
  layers.flatMap(({ name, shapes }) =>
    shapes.flatMap(strokesOf).some(([x, y]) => x < 0 || y < 0 || x > widthMm || y > heightMm)
      ? [`${title}: ${name} past the edge of the paper`]
      : [],
  );

const faults = (scene: Scene, words: readonly PdfWord[]): readonly string[] => {
  const boxes = words.map(lettersOf);
  const out = boxes.filter(
    ({ leftMm, rightMm, topMm, bottomMm }) =>
      leftMm < 20 || rightMm > scene.widthMm - 10 || topMm < 10 || bottomMm > scene.heightMm - 10,
  );
  const over = boxes.flatMap((one, i) =>
    boxes
      .slice(i + 1)
      .filter((other) => overlapMm2(one, other) > 0.05)
      .map((other) => `${one.text} / ${other.text}`),
  );
  return [
    ...out.map(({ text }) => `${scene.title}, out of the frame: ${text}`),
    ...over,
    ...signFaults(scene, boxes),
    ...offPaper(scene),
  ];
};

async function faultsOnPaper(sheets: readonly Scene[]): Promise<readonly string[]> {
  const { words } = await readPdf(await sheetsPdf({ title: 'Sheets', date: '2026-11-27', sheets }));
  expect(words).toHaveLength(sheets.length);
  for (const page of words) expect(page.length).toBeGreaterThan(40);
  return sheets.flatMap((scene, i) => faults(scene, words[i] ?? []));
}

describe.each(demoNames)('the sheets of %s', (name) => {
  const job = demoJob(name);

  it.each(job.schemes.map(({ id }) => id))(
    '%s: no word over another or on a sign, and nothing past the frame, on A4 and A3',
    async (id) => {
      expect(await faultsOnPaper(sheetsOf(job, id))).toEqual([]);
    },
  );
});

describe('the sheets of a house of eighty points', () => {
  const WANTED = 6;
  const house = produce(houseOf({ seed: 31, rooms: 10, wanted: WANTED, outlets: 74 }), (draft) => {
    const wanted = draft.points.filter(({ status }) => status === 'wanted');
    const found = draft.points.filter(({ status, kind }) => status === 'existing' && kind !== 'joint');
    draft.schemes.push({
      ...{ id: 'spurs-all', name: 'A spur to each', remedies: [], locks: [] },
      connections: wanted.map((point, i) => ({
        ...{ id: `spur-${i + 1}`, kind: 'spur' as const, to: point.id },
        from: { point: found[i * 9]?.id ?? '' },
      })),
    });
  });

  it('hold all their lists within the frame, whatever does not fit beside the plan on further sheets', async () => {
    const sheets = sheetsOf(house, 'spurs-all');
    expect(house.points.length).toBe(80);
    expect((await faultsOnPaper(sheets)).filter((fault) => fault.includes('out of the frame'))).toEqual([]);
    const said = sheets.map((scene) => JSON.stringify(scene)).join('');
    for (const { label } of house.points.filter(({ status }) => status === 'wanted'))
      expect(said).toContain(label);
  });
});

describe('what the sheets are measured by', () => {
  /** A sheet with the label of its first named sign in the middle of that sign, and a stroke past the edge. */
  function spoilt(scene: Scene): Scene {
    const layers = scene.layers.map((layer) => {
      if (layer.name !== 'points') return layer;
      const [first, ...others] = layer.shapes;
      if (first?.kind !== 'group') throw new Error('no sign is drawn first');
      const label = first.shapes.at(-1);
      const [x, y] = strokesOf({ ...first, shapes: first.shapes.slice(1) })[0] ?? [0, 0];
      if (label?.kind !== 'text') throw new Error('the first sign has no label');
      const moved = { ...label, at: sheetPoint(x, y + 0.9) };
      const out = line('wall', [sheetPoint(x, y), sheetPoint(x, -1)]);
      return {
        ...layer,
        shapes: [{ ...first, shapes: [...first.shapes.slice(0, -1), moved] }, ...others, out],
      };
    });
    return { ...scene, layers };
  }

  it('sees a label on its own sign, and a stroke that leaves the paper', async () => {
    const [plan] = sheetsOf(demoJob('saltglass-row'), 'spurs-rcbo').filter(({ scale }) => scale !== null);
    if (plan === undefined) throw new Error('no plan');
    const found = await faultsOnPaper([spoilt(plan)]);
    expect(found.filter((fault) => fault.includes(' on '))).not.toEqual([]);
    expect(found).toContain(`${plan.title}: points past the edge of the paper`);
  });
});
