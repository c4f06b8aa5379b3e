import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { labelPlacer, overlapMm2, textBox } from '#drawing/label-placer.ts';
import { inksOf } from '#drawing/plan/sheet/legend.ts';
import { sheetLabels } from '#drawing/plan/sheet/sheet-labels.ts';
import { uprightSaid, uprightsOf } from '#drawing/plan/sheet/uprights.ts';
import type { Scene, Shape } from '#drawing/scene.ts';
import { drawSymbol } from '#drawing/symbols.ts';
import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import { papersOf } from '#exports/papers.ts';
import { planFiles, planScenes } from '#exports/plan-files.ts';
import type { Job } from '#model/job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { strokesOf } from './symbol-strokes.ts';

const papersFor = (job: Job, schemeId: string) => {
  const papers = papersOf(job, demoLibrary(), { date: '2026-11-27', revision: 1, schemeId });
  if (papers === null) throw new Error('no papers');
  return papers;
};

const textsOf = (shapes: readonly Shape[]): readonly string[] =>
  shapes.flatMap((shape) =>
    shape.kind === 'group' ? textsOf(shape.shapes) : shape.kind === 'text' ? [shape.text] : [],
  );
const layerOf = (scene: Scene, name: string): readonly Shape[] =>
  scene.layers.find((layer) => layer.name === name)?.shapes ?? [];
const rowsOf = (scenes: readonly Scene[]): string =>
  scenes.flatMap((scene) => textsOf(layerOf(scene, 'words'))).join(' ');

const terrace = papersFor(demoJob('saltglass-row'), 'spurs-rcbo');
const sheets = planScenes(terrace);
const [ground, , first] = sheets;

describe('a sheet’s lettering', () => {
  const bounds = { leftMm: 0, topMm: 0, rightMm: 100, bottomMm: 100 };

  it('stands beside what it names, and farther off with a line that leads to it', () => {
    const free = labelPlacer(bounds);
    const labels = sheetLabels(free);
    const named = { at: sheetPoint(50, 50), halfMm: 3 };
    labels.place('W1 h 450', named);
    expect(labels.leaders()).toHaveLength(0);
    free.take({ leftMm: 35, rightMm: 65, topMm: 38, bottomMm: 62 });
    const far = labels.place('W2 h 450', named);
    expect(far).not.toBeNull();
    const [leader] = labels.leaders();
    const ends = leader === undefined ? [] : strokesOf(leader);
    expect(Math.hypot((ends[0]?.[0] ?? 0) - 50, (ends[0]?.[1] ?? 0) - 50)).toBeCloseTo(3, 1);
  });

  it('is told as not marked where all room is taken, and covers nothing', () => {
    const free = labelPlacer(bounds);
    const labels = sheetLabels(free);
    free.take(bounds);
    expect(labels.place('W1 h 450', { at: sheetPoint(50, 50), halfMm: 3 })).toBeNull();
    expect(labels.unmarked()).toEqual(['W1 h 450']);
  });

  it('keeps twenty labels of one place apart', () => {
    const labels = sheetLabels(labelPlacer(bounds));
    const boxes = Array.from({ length: 20 }, (_, i) => {
      const at = labels.place(`K${i}`, { at: sheetPoint(50, 50), halfMm: 2 });
      return at === null ? null : textBox(at, `K${i}`, 2.5);
    }).flatMap((box) => box ?? []);
    expect(boxes.length + labels.unmarked().length).toBe(20);
    for (const [i, one] of boxes.entries())
      for (const other of boxes.slice(i + 1)) expect(overlapMm2(one, other)).toBe(0);
  });
});

describe('where cables go up and down', () => {
  it('the heights stand on the plan of the storey, as the run has them', () => {
    const [run] = terrace.shown.worked.runs;
    if (run === undefined || ground === undefined) throw new Error('nothing is run');
    const uprights = uprightsOf(run);
    // R1 at 300 down under the floor, up to W1 at 450: two uprights, each through wall and void in one.
    expect(uprights.map((one) => uprightSaid(one, 'ground-flr'))).toEqual([
      { isUp: false, said: '300 to −110' },
      { isUp: true, said: '−110 to 450' },
    ]);
    expect(textsOf(layerOf(ground, 'rises'))).toEqual(['K1 h 300 to −110', 'K1 h −110 to 450']);
    expect(rowsOf(sheets)).toContain('h down 300 to −110; up −110 to 450');
  });

  it('a joint under a floor has its height', () => {
    if (first === undefined) throw new Error('no first floor');
    expect(textsOf(layerOf(first, 'points'))).toContain('J1 32 A h −110');
  });

  it('a cable that comes from another storey is followed from this one', () => {
    const semi = papersFor(demoJob('fernlow-close'), 'fused-unit');
    const run = semi.shown.worked.runs.find(({ segments }) => uprightsOf({ segments }).length === 2);
    if (run === undefined) throw new Error('no run over the ceiling');
    const said = uprightsOf(run).map((one) => [
      uprightSaid(one, 'ground-flr')?.said,
      uprightSaid(one, 'first-flr1')?.said,
    ]);
    expect(said).toEqual([
      ['450, up', '−110, down'],
      ['1100, up', '−110, down'],
    ]);
    expect(uprightSaid(uprightsOf(run)[0] as never, 'elsewhere')).toBeNull();
  });
});

describe('cables as found', () => {
  it('are listed by circuit: leg, size, colours, and how sure each is', () => {
    const rows = rowsOf(sheets);
    expect(rows).toContain('Cables as found Socket ring, whole house');
    expect(rows).toMatch(
      /board A–R1: 2\.5\/1\.5 mm² flat twin, seen; red, black; 6\.30 m\s+measured; way assumed/,
    );
    const flat = rowsOf(planScenes(papersFor(demoJob('quarrel-court'), 'ring-by-w2')));
    expect(flat).toContain('way seen');
    expect(flat).toMatch(/a part of it\s+taken out of use|taken out of use/);
  });

  it('say so where nobody has looked', () => {
    const job = demoJob('saltglass-row');
    const circuits = job.circuits.map(({ colours: _, ...circuit }) => circuit);
    const points = job.points.map(({ asFound: _, ...point }) => point);
    const legs = job.legs.map(({ cable: _, lengthMm: __, ...leg }) => leg);
    const rows = rowsOf(planScenes(papersFor({ ...job, circuits, points, legs }, 'spurs-rcbo')));
    expect(rows).toMatch(/cable not looked at;\s+colours not told;\s+length not\s+told/);
  });
});

describe('marks by walls', () => {
  it('a board stands off the face of its wall in its room, as accessories do', () => {
    const place = { at: sheetPoint(50, 50), into: [0, -1] as const };
    for (const symbol of ['board', 'socket-twin', 'fused-unit'] as const) {
      const solid = drawSymbol(symbol, place, 'found').filter(
        (shape) => shape.kind !== 'line' || shape.closed,
      );
      const deepest = Math.max(...solid.flatMap(strokesOf).map(([, y]) => y));
      expect([symbol, deepest < 50 - 0.5]).toEqual([symbol, true]);
    }
  });

  it('an opened floor is marked on the floor of the room, not in the wall', () => {
    const { plan } = terrace.shown.worked;
    if (first === undefined) throw new Error('no first floor');
    const { scale } = first;
    expect(scale).toBe(50);
    const marks = layerOf(first, 'boards-up');
    expect(marks.length).toBeGreaterThan(2);
    const walls = layerOf(first, 'walls').filter((shape) => inksOf([shape]).has('wall'));
    for (const mark of marks) {
      const corners = mark.kind === 'line' ? mark.points : [];
      const inWall = walls.some((wall) =>
        corners.some((at) => wall.kind === 'line' && isWithin(wall.points, at)),
      );
      expect(inWall).toBe(false);
    }
    expect(plan.storeys).toHaveLength(2);
  });
});

const isWithin = (
  outline: readonly (readonly [number, number])[],
  at: readonly [number, number],
): boolean => {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  return (
    at[0] > Math.min(...xs) + 0.05 &&
    at[0] < Math.max(...xs) - 0.05 &&
    at[1] > Math.min(...ys) + 0.05 &&
    at[1] < Math.max(...ys) - 0.05
  );
};

describe('the files of a set', () => {
  it('have the sheets of lists as SVG too, each once, by its number', () => {
    const files = planFiles(terrace);
    const lists = files.flatMap(({ lists: own }) => own());
    const listed = sheets.flatMap(({ scale }, i) =>
      scale === null ? [`wiring-plan-sheet-${i + 1}.svg`] : [],
    );
    expect(lists.map(({ name }) => name).toSorted()).toEqual(listed);
    expect(listed.length).toBeGreaterThan(0);
    for (const { svg } of lists) expect(svg).toContain('Cables as found');
  });
});
