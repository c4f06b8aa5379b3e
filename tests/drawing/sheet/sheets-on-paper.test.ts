import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { line, type Scene, type Shape, words } from '#drawing/scene.ts';
import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import { papersOf } from '#exports/papers.ts';
import { planScenes } from '#exports/plan-files.ts';
import type { Job } from '#model/job.ts';
import { demoJob, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { houseOf } from '#tests/houses/house-of.ts';
import { faultsOnPaper } from './sheet-faults.ts';
import { struckWords } from './struck-words.ts';
import { strokesOf } from './symbol-strokes.ts';

/** Every scheme's sheets as each plan asks, on A4 and on A3. */
function sheetsOf(job: Job, schemeId: string): readonly Scene[] {
  const papers = papersOf(job, demoLibrary(), { date: '2026-11-27', revision: 1, schemeId });
  if (papers === null) throw new Error('no papers');
  return [planScenes(papers), planScenes(papers, 'A4'), planScenes(papers, 'A3')].flat();
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

  it('sees a word that a line strikes out, before or after it is drawn, and one that is papered over', () => {
    const word = words('text', sheetPoint(50, 50), 'W1 h 450', { anchor: 'middle' });
    const stroke = line('dimension', [sheetPoint(50, 40), sheetPoint(50, 60)]);
    const ground = line(
      'halo',
      [sheetPoint(40, 47), sheetPoint(60, 47), sheetPoint(60, 52), sheetPoint(40, 52)],
      true,
    );
    const seen = (...shapes: readonly Shape[]) =>
      struckWords({
        title: 'T',
        widthMm: 210,
        heightMm: 297,
        scale: 50,
        layers: [{ name: 'points', shapes }],
      });
    expect(seen(stroke, ground, word)).toEqual([]);
    expect(seen(stroke, word)).toHaveLength(1);
    expect(seen(ground, word, stroke)).toHaveLength(1);
    expect(seen(word, ground)).toHaveLength(1);
  });
});
